import assert from 'node:assert/strict';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { defaultLanguage, entriesOf } from './catalogue.js';
import { pseudoLanguages, writePseudoWords } from './pseudo.js';

const ours = entriesOf(defaultLanguage);
const [longer, mirrored] = pseudoLanguages.map(entriesOf);
const sentences = (entries) =>
  Object.entries(ours).map(([id, entry]) =>
    typeof entry === 'string' ? [entry, entries[id]] : [entry.other, entries[id].other],
  );

const letters = (sentence) => sentence.replace(/\{\w+\}|[^\p{L}]/gu, '').length;
const marks = (sentence) => sentence.match(/\{\w+\}/g) ?? [];

test('a word of each', () => {
  assert.equal(longer['role.engine'], '[ééñĝîîñéé]');
  assert.equal(mirrored['role.engine'], '[ينجىني]');
});

for (const [name, entries] of [
  ['longer', longer],
  ['mirrored', mirrored],
])
  test(`${name}: every sentence is in brackets, with its placeholders and no plain letter`, () => {
    for (const [plain, pseudo] of sentences(entries)) {
      assert.match(pseudo, /^\[.*\]$/s);
      assert.deepEqual(marks(pseudo), marks(plain), pseudo);
      assert.equal(pseudo.replace(/\{\w+\}/g, '').match(/[a-z]/i), null, pseudo);
      assert.equal(pseudo, pseudo.normalize('NFC'));
    }
  });

test('the longer one is longer by 40 % at least, and by no more than short words are doubled', () => {
  for (const [plain, pseudo] of sentences(longer)) {
    const [before, after] = [letters(plain), letters(pseudo)];
    assert.ok(after >= 1.4 * before && after <= 2 * before, `${before} to ${after}: ${pseudo}`);
  }
});

test('a count has the forms of the language', () => {
  assert.deepEqual(longer['due.days'], { one: '[{count} ðååýý]', other: '[{count} ðååýýš]' });
  const six = ['few', 'many', 'one', 'other', 'two', 'zero'];
  assert.deepEqual(Object.keys(mirrored['due.days']).sort(), six);
  assert.equal(longer['step.filter-off-centrifugal.do'].by, 'screws');
});

test('the folder holds the default as it is, and the others in the same parts', async (t) => {
  const folder = await mkdtemp(join(tmpdir(), 'words-'));
  t.after(() => rm(folder, { recursive: true }));
  await writePseudoWords(folder);
  const languages = await readdir(folder);
  assert.deepEqual(languages.sort(), [defaultLanguage.tag, 'ar-XB', 'en-XA'].sort());
  const files = await Promise.all(languages.map((tag) => readdir(join(folder, tag))));
  for (const list of files) assert.deepEqual(list, files[0]);
  const about = JSON.parse(await readFile(join(folder, 'ar-XB/language.json'), 'utf8'));
  assert.equal(about.dir, 'rtl');
});
