// A reporter of node --test that writes which tests failed, one a line, to the file
// that FAILED_TESTS names: as `make test-one` takes them.
import { appendFileSync } from 'node:fs';
import { relative } from 'node:path';

/* eslint-disable-next-line require-yield -- it has nothing to say itself */
export default async function* failed(events) {
  for await (const { type, data } of events) {
    if (type !== 'test:fail' || data.nesting > 0 || !process.env.FAILED_TESTS) continue;
    const file = relative('.', data.file ?? data.name);
    const test = data.name.endsWith(file) ? '' : `:${data.name}`; // a file that can't be run is a test itself
    appendFileSync(process.env.FAILED_TESTS, `${file}${test}\n`);
  }
}
