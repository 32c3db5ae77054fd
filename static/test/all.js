// Runs targets of make, all of them whatever fails, and says at the end what failed
// and how to run it alone: node static/test/all.js TARGET...
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { failedInGo } from './go-output.js';

const list = 'build/failed.txt'; // where failed.js writes the page's tests
const leftOut = 'build/left-out.txt'; // where the tests write which engines they left out

/** Runs one target; resolves to {target, ok, output, page}. */
async function run(target) {
  rmSync(list, { force: true });
  console.log(`\n== make ${target}`);
  const child = spawn('make', ['--no-print-directory', '-k', target], {
    stdio: ['inherit', 'pipe', 'pipe'],
    env: { ...process.env, FAILED_TESTS: list, LEFT_OUT: leftOut },
  });
  let output = '';
  for (const [from, to] of [
    [child.stdout, process.stdout],
    [child.stderr, process.stderr],
  ])
    from.on('data', (data) => {
      to.write(data);
      output += data;
    });
  const code = await new Promise((resolve) => child.once('close', resolve));
  return { target, ok: code === 0, output, page: read(list) };
}

function read(path) {
  try {
    return readFileSync(path, 'utf8').split('\n').filter(Boolean);
  } catch {
    return []; // there was nothing to write
  }
}

/** What to call to see one failure again; the target itself when no single test failed. */
function commands({ target, output, page }) {
  const go = failedInGo(output).map((test) => (target === 'test-wasm' ? `wasm:${test}` : test));
  const tests = [...go, ...page];
  return tests.length ? tests.map((test) => `make test-one T=${quoted(test)}`) : [`make ${target}`];
}

/** As a shell and then make read it. */
const quoted = (text) =>
  /[^\w./:-]/.test(text) ? `'${text.replaceAll('$', '$$$$').replaceAll("'", `'\\''`)}'` : text;

mkdirSync('build', { recursive: true });
rmSync(leftOut, { force: true });
const results = [];
for (const target of process.argv.slice(2)) results.push(await run(target));
console.log('');
for (const { target, ok } of results) console.log(`${ok ? 'ok    ' : 'FAILED'} ${target}`);
const failures = results.filter(({ ok }) => !ok).flatMap(commands);
if (failures.length) {
  console.log(`\nTo run what failed alone:\n${failures.map((line) => `  ${line}\n`).join('')}`);
  process.exitCode = 1;
}
const untried = [...new Set(read(leftOut))];
if (untried.length)
  console.log(`\nNOT TRIED in these engines:\n${untried.map((line) => `  ${line}\n`).join('')}`);
