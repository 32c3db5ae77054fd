// `make watch`: what changes in a copy of the project changes in a page that is open.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { appendFile, cp, mkdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { defaultLanguage } from '../catalogue.js';
import { openBrowser, temporaryFolder } from './launch.js';
import { askCore, polling } from './page.js';
import { patience } from './patience.js';
import { untilSeen } from './person.js';
import { watch } from './watch.js';
import { words } from './words.js';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const sources = ['Makefile', 'go.mod', 'go.sum', 'internal', 'server', 'specs', 'static', 'wasm'];
const built = ['core.wasm', 'wasm_exec.js', 'licences.txt'];

/** Copies what a build needs; resolves to the folder. */
async function copyProject(t) {
  const dir = await temporaryFolder(t);
  const options = { recursive: true, preserveTimestamps: true };
  const filter = (path) => !path.includes('node_modules');
  for (const name of sources) await cp(join(root, name), join(dir, name), { ...options, filter });
  await mkdir(join(dir, 'build'));
  for (const name of built) await cp(join(root, 'build', name), join(dir, 'build', name), options);
  await symlink(join(root, 'static/node_modules'), join(dir, 'static/node_modules'));
  return dir;
}

/** Starts to watch a folder; resolves to {url, errors}, the lines that it complains in. */
async function startWatching(t, dir) {
  const child = spawn(join(root, 'build/watch'), ['-addr', 'localhost:0'], {
    cwd: dir,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise((resolve) => child.once('exit', resolve));
  t.after(() => (child.kill(), ended));
  const errors = createInterface(child.stderr);
  const url = new Promise((resolve) =>
    createInterface(child.stdout).on('line', (line) => {
      const [found] = line.match(/http:\S+/) ?? [];
      if (found) resolve(found);
    }),
  );
  const early = ended.then((code) => Promise.reject(new Error(`it ended with ${code}`)));
  return { url: await Promise.race([url, early]), errors };
}

/** Puts a text in the place of another in a file that has it once. */
async function replace(path, before, after) {
  const parts = (await readFile(path, 'utf8')).split(before);
  assert.equal(parts.length, 2, `${path} has ${before} once`);
  await writeFile(path, parts.join(after));
}

test('a change of a module, a style, a word and the core is seen in an open page', async (t) => {
  const dir = await copyProject(t);
  const { url } = await startWatching(t, dir);
  const page = await (await openBrowser(t)).newPage();
  const complaints = await watch(page);
  const until = (what) => page.waitForFunction(what, { polling, timeout: patience(120) });
  await page.goto(url);
  await untilSeen(page, words('bikes.title'));

  await appendFile(join(dir, 'static/app/main.js'), `\nglobalThis.changed = 'yes';\n`);
  await until(() => globalThis.changed === 'yes');

  await appendFile(join(dir, 'static/app/main.css'), '\nbody {\n  outline: 3px solid red;\n}\n');
  await until(() => getComputedStyle(document.body).outlineWidth === '3px');

  const first = join(dir, 'specs/words', defaultLanguage.tag, 'first.json');
  await replace(first, words('app.tagline'), 'Another word for it.');
  await untilSeen(page, 'Another word for it.', patience(120));

  const core = join(dir, 'internal/core/core.go');
  await replace(core, 'failed("unknown-op"', 'failed("another-op"');
  const loaded = await page.evaluate(() => document.querySelector('meta[name=version]').content);
  await page.waitForFunction(
    (version) =>
      globalThis.tidysump && document.querySelector('meta[name=version]').content !== version,
    { polling, timeout: patience(120) },
    loaded,
  );
  assert.equal(await askCore(page), 'another-op');
  assert.deepEqual(
    complaints.filter((complaint) => /policy/i.test(complaint)),
    [],
  );
});

test('what cannot be built is left as it was, and is built once it is mended', async (t) => {
  const dir = await copyProject(t);
  const { url, errors } = await startWatching(t, dir);
  const page = await (await openBrowser(t)).newPage();
  await page.goto(url);
  await untilSeen(page, words('bikes.title'));
  const main = join(dir, 'static/app/main.js');
  const before = await readFile(main, 'utf8');
  const refused = once(errors, 'line');
  await writeFile(main, `${before}\nconst = ;\n`);
  assert.match((await refused)[0], /main\.js can't be bundled/);
  await page.reload();
  await untilSeen(page, words('bikes.title'));
  await writeFile(main, `${before}\nglobalThis.changed = 'mended';\n`);
  await page.waitForFunction(() => globalThis.changed === 'mended', {
    polling,
    timeout: patience(120),
  });
});
