// No sentence of the page misses a value: what is written out is read in the sources,
// and what isn't is heard when a page says it (browser/watch.js).
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { parse } from 'acorn';
import { defaultLanguage, entriesOf } from './catalogue.js';
import { modules } from './modules.js';
import { said } from './values.js';

const entries = entriesOf(defaultLanguage);

const placeholders = (entry) =>
  [...(entry.other ?? entry).matchAll(/\{(\w+)\}/g)].map(([, name]) => name);

test('every t() whose values are written out gives all that its sentence asks for', () => {
  const calls = modules.flatMap(({ path, ast }) => said(ast).map((call) => ({ path, ...call })));
  const known = calls.filter(({ id }) => Object.hasOwn(entries, id));
  const missing = known.flatMap(({ path, id, names }) =>
    placeholders(entries[id])
      .filter((name) => !names.includes(name))
      .map((name) => `${path}: nothing fills {${name}} of ${id}`),
  );
  assert.deepEqual(missing, []);
  assert.ok(known.length > 400, `only ${known.length} calls`);
});

test('what is said is read in the source', () => {
  const source = `t('a'); t(x ? 'b' : 'c', { one, 'two': 2 }); t(id, { one }); t('d', { ...all }); t('e', values); u('f');`;
  assert.deepEqual(said(parse(source, { ecmaVersion: 'latest' })), [
    { id: 'a', names: [] },
    { id: 'b', names: ['one', 'two'] },
    { id: 'c', names: ['one', 'two'] },
  ]);
});
