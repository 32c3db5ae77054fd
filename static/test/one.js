// Runs one test of Go or of the page, and builds before it what it needs; the Makefile
// says what T, which names it, may be.
import { spawnSync } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { goTest, pageTest } from './which.js';

const what = process.env.T ?? '';

const files = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, path, name }) => join(parentPath ?? path, name))
    .filter((path) => !path.includes('node_modules'));

/** The Go test files of the project, {path, text}. */
const goFiles = () =>
  ['internal', 'server', 'specs', 'wasm']
    .flatMap(files)
    .filter((path) => path.endsWith('_test.go'))
    .map((path) => ({ path, text: readFileSync(path, 'utf8') }));

/** What runs a test file of the page: [target, the variable that names the files]. */
function targetOf(file) {
  if (file.includes('/browser/')) return ['test-browser', 'BROWSER_TESTS'];
  if (file.includes('/engines/')) return ['test-engines', 'ENGINE_TESTS'];
  if (file.includes('/compat/built')) return ['test-built', 'BUILT_TESTS'];
  return ['test-units', 'PAGE_TESTS'];
}

/** What to ask of make: {target, variables, env}. */
function asked() {
  const [, wasm, test] = what.match(/^(wasm:)?(.*)$/s);
  const go = goTest(test, goFiles());
  if (go) {
    const target = wasm ? 'test-wasm' : go.built ? 'test-go' : 'test-go-bare';
    return { target, variables: [`PACKAGES=${go.packages.join(' ')}`], env: { GO_RUN: go.run } };
  }
  const { file, name } = pageTest(test, [...files('static/app'), ...files('static/test')]);
  const [target, list] = targetOf(file);
  return { target, variables: [`${list}=${file}`], env: { TEST_NAME: name } };
}

try {
  if (!what) throw new Error('Say which: make test-one T=TestX');
  const { target, variables, env } = asked();
  const { status } = spawnSync('make', ['--no-print-directory', target, ...variables], {
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  process.exitCode = status ?? 1;
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
