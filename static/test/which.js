// Which test is meant by what is given to `make test-one`.
import { dirname } from 'node:path';

const goName = /^(Test|Fuzz|Example)\w*(\/.*)?$/s;
const goFolder = /^(\.\/)?(internal|server|specs|wasm)(\/[\w/-]+)?$/;

/**
 * A test of Go: "TestX", "TestX/case", "./internal/oil", "./internal/oil:TestX".
 * `files` are all test files, {path, text}. Gives {packages, run, built}: `run` as
 * `go test -run` takes it, `built` when the tests look at what make builds; undefined
 * for what is no test of Go.
 */
export function goTest(what, files) {
  const [, place, name] = what.match(/^(?:([^:]*):)?(.*)$/s);
  const [folder, test] = place === undefined && !goName.test(what) ? [what, ''] : [place, name];
  if (folder ? !goFolder.test(folder) : !goName.test(test)) return undefined;
  const [first, ...cases] = test.split('/');
  const own = folder
    ? files.filter(({ path }) => `./${dirname(path)}` === `./${folder.replace(/^\.\//, '')}`)
    : files.filter(({ text }) => text.includes(`\nfunc ${first}(`));
  if (!own.length) throw new Error(`There is no test ${what}.`);
  const packages = [...new Set(own.map(({ path }) => `./${dirname(path)}`))];
  const beside = files.filter(({ path }) => packages.includes(`./${dirname(path)}`));
  return {
    packages,
    run: test && [`^${first}$`, ...cases].join('/'),
    built: beside.some(({ text }) => text.includes('/build/')),
  };
}

/**
 * A test of the page: a file by the end of its path, with or without ".test.js", and
 * after a colon the name of one test. `files` are all files. Gives {file, name}.
 */
export function pageTest(what, files) {
  const [, end, name = ''] = what.match(/^([^:]*?)(?:\.test\.js)?(?::(.*))?$/s);
  const found = files.filter((path) => `/${path}`.endsWith(`/${end}.test.js`));
  if (found.length === 1) return { file: found[0], name };
  if (!found.length) throw new Error(`There is no test ${what}.`);
  throw new Error(`Several are called ${end}: ${found.join(' ')}`);
}
