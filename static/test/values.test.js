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

const calls = modules.flatMap(({ path, ast }) => said(ast).map((call) => ({ path, ...call })));
const known = calls.filter(({ id }) => Object.hasOwn(entries, id));

/** Whether a sentence of an entry ends in a value that stands alone behind its name. */
const alone = (entry, name) =>
  (entry.other ?? entry)
    .split(/(?<=[.?!;]) /)
    .filter((sentence) => sentence.includes(`{${name}}`))
    .every((sentence) => new RegExp(`(^|\\p{L}[^{}]*: )\\{${name}\\}[.?;]?$`, 'u').test(sentence));

test('what may only be "not known" stands alone behind its name', () => {
  const cut = known.flatMap(({ path, id, nameless }) =>
    nameless
      .filter((name) => !alone(entries[id], name))
      .map((name) => `${path}: {${name}} of ${id}`),
  );
  assert.deepEqual(cut, []);
  for (const [sentence, want] of [
    ['{a}', true],
    ['Thread: {a}.', true],
    ['It is done. Thread: {a}. Then rest.', true],
    ['{a} came in.', false],
    ['The card asks for {a}.', false],
    ['{b}: {a}', false],
  ])
    assert.equal(alone(sentence, 'a'), want, sentence);
});

test('every t() whose values are written out gives all that its sentence asks for', () => {
  const missing = known.flatMap(({ path, id, names }) =>
    placeholders(entries[id])
      .filter((name) => !names.includes(name))
      .map((name) => `${path}: nothing fills {${name}} of ${id}`),
  );
  assert.deepEqual(missing, []);
  assert.ok(known.length > 400, `only ${known.length} calls`);
});

test('what is said is read in the source', () => {
  const source = `t('a'); t(x ? 'b' : 'c', { one, 'two': y ?? '@not-known' }); t(id, { one }); t('d', { ...all }); t('e', values); u('f');`;
  const both = { names: ['one', 'two'], nameless: ['two'] };
  assert.deepEqual(said(parse(source, { ecmaVersion: 'latest' })), [
    { id: 'a', names: [], nameless: [] },
    { id: 'b', ...both },
    { id: 'c', ...both },
  ]);
});
