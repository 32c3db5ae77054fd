// A reporter of node --test that says what its own "spec" does, but for the tests that
// weren't asked for, and that fails when none is called as was asked.
import { Readable } from 'node:stream';
import { spec } from 'node:test/reporters';

const { TEST_NAME: name } = process.env;
const passedBy = 'test name does not match pattern'; // as node calls it
const itsLine = new RegExp(`^.*# ${passedBy}.*\n`, 'gm');

export default async function* chosen(events) {
  let ran = false;
  async function* noted() {
    for await (const event of events) {
      const { type, data } = event;
      ran ||= type === 'test:fail' || (type === 'test:pass' && data.skip !== passedBy);
      yield event;
    }
  }
  for await (const text of Readable.from(noted()).compose(new spec()))
    yield String(text).replace(itsLine, '');
  if (!name || ran) return;
  process.exitCode = 1;
  yield `No test here is called "${name}", nor begins so.\n`;
}
