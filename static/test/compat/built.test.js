// The built page, held against the data on browsers for the oldest versions promised.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { parse } from 'acorn';
import { full, fullAncestor } from 'acorn-walk';
import { faults } from './check.js';
import { exceptions, known } from './exceptions.js';
import { ownNames, strangers } from './own-names.js';
import { builtSite, checkSite, scriptsOf } from './site.js';
import { syntaxOf } from './syntax.js';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** The test files of the project, {path, text}. */
const testFiles = ['internal', 'server', 'specs', 'static/app', 'static/test']
  .flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true }).map((name) => join(folder, name)),
  )
  .filter((path) => /_test\.go$|\.test\.js$/.test(path))
  .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));

const site = builtSite();

test('nothing is newer than the oldest browsers promised, but for what has a fallback', async () => {
  const { report, needed } = await checkSite(site);
  const unneeded = [...Object.keys(ownNames), ...strangers.map(({ classes }) => String(classes))]
    .filter((name) => !needed.has(name))
    .map((name) => `${name} is listed in own-names.js, and nothing needs it`);
  assert.deepEqual([...faults(report, exceptions, known, testFiles), ...unneeded], []);
});

// What is put into files of the built page, and what must be found there.
const planted = {
  'app/main.css': ['a{width:10dvh}', 'css.types.length.viewport_percentage_units_dynamic'],
  'index.html': ['<p popover>a</p>', 'html.global_attributes.popover'],
  'sw.js': [';[].toSorted(),/(?<=a)b/;', 'javascript.builtins.Array.toSorted'],
  'app/rescue.js': [';document.startViewTransition()', 'api.Document.startViewTransition'],
};

test('what is newer is found where it is put, and nothing else', async () => {
  const part = site.files.filter(({ name }) => planted[name]);
  assert.equal(part.length, Object.keys(planted).length);
  const keys = async (files) => (await checkSite({ files, headers: {} })).report.keys();
  const before = await keys(part);
  const after = await keys(
    part.map((file) => ({ ...file, body: `${file.body}${planted[file.name][0]}` })),
  );
  const want = Object.values(planted).map(([, key]) => key);
  assert.deepEqual(
    after.filter((key) => !before.includes(key)),
    [...want, 'javascript.regular_expressions.lookbehind_assertion'].sort(),
  );
});

test('nothing imports a module that waits', () => {
  const scripts = scriptsOf(site);
  const waiting = scripts.filter(({ text, module }) => module && waits(text));
  assert.deepEqual(
    waiting.map(({ name }) => name),
    ['app/main.js'],
  );
  const { path } = site.files.find(({ name }) => name === 'app/main.js');
  const imports = (text) => [...text.matchAll(/\b(?:import|from)\s*\(?\s*"([^"]+)"/g)];
  const imported = scripts.flatMap(({ text }) => imports(text).map(([, url]) => url));
  assert.ok(imported.length > 2 && !imported.includes(path), imported.join());
});

/** Whether a module awaits something outside of its functions. */
function waits(text) {
  let found = false;
  const tree = parse(text, { ecmaVersion: 'latest', sourceType: 'module' });
  fullAncestor(tree, (node, ancestors) => {
    found ||= syntaxOf(node, ancestors.slice(0, -1)).some((way) => way.at(-1) === 'top_level');
  });
  return found;
}

test('no value of a class field stands in brackets', () => {
  for (const { name, text, module } of scriptsOf(site))
    for (const field of inBrackets(text, module)) assert.fail(`${name}: ${field}`);
  assert.deepEqual(inBrackets('class A { a = f(1); b = (c) => c; d = (e ?? f).g; }'), [
    'd = (e ?? f).g;',
  ]);
});

/** The fields of classes that have brackets in their value. */
function inBrackets(text, module = true) {
  const found = [];
  const sourceType = module ? 'module' : 'script';
  const tree = parse(text, { ecmaVersion: 'latest', sourceType, preserveParens: true });
  full(tree, (node) => {
    if (node.type !== 'PropertyDefinition' || !node.value) return;
    let has = false;
    full(node.value, ({ type }) => (has ||= type === 'ParenthesizedExpression'));
    if (has) found.push(text.slice(node.start, node.end));
  });
  return found;
}

test('workers come from where scripts come from', () => {
  for (const [path, { 'Content-Security-Policy': policy }] of Object.entries(site.headers)) {
    const [scripts, workers] = ['script-src', 'worker-src'].map((directive) =>
      policy
        .split('; ')
        .find((part) => part.startsWith(directive))
        .split(' ')
        .slice(1)
        .filter((source) => !source.includes('eval')),
    );
    assert.deepEqual(workers, scripts, path);
  }
});

test('each kind of icon is there', () => {
  const page = site.files.find(({ name }) => name === 'index.html').body.toString();
  const paths = site.files.map(({ path }) => path);
  for (const rel of ['icon', 'apple-touch-icon']) {
    const [tag] = page.match(new RegExp(`<link rel="${rel}"[^>]*>`)) ?? [''];
    const [, path] = tag.match(/href="([^"]+)"/) ?? [];
    assert.ok(paths.includes(path), `${rel}: ${tag}`);
  }
});
