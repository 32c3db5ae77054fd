import assert from 'node:assert/strict';
import { test } from 'node:test';
import { byEngine, rowsIn, tables, withTable } from './table.js';
import { walk } from './walk.js';

const works = { outcome: 'works' };
const all = Object.fromEntries(walk.map(({ id }) => [id, works]));
const seen = {
  chromium: { version: '156.0.8078.12', lines: all },
  'webkit-old': {
    version: '2.38.6',
    lines: {
      undo: works,
      'card as QR codes, and back': { outcome: 'falls back', seen: 'Save it | as a file.' },
      [walk[0].id]: { outcome: 'missing', seen: 'Nothing.', because: 'of the port' },
    },
  },
};
const empty = 'Before.\n<!-- make engines-table -->\n<!-- end of the table -->\nAfter.\n';

test('a table stands between its marks, and is read back as it was written', () => {
  for (const [file, rowsOf] of Object.entries(tables)) {
    const text = withTable(empty, rowsOf(seen));
    assert.match(text, /^Before\.\n[^]*\nAfter\.\n$/, file);
    assert.deepEqual(rowsIn(text), rowsOf(seen), file);
    assert.equal(withTable(text, rowsOf(seen)), text, 'written anew, nothing changes');
  }
});

test('what was seen stands in it by engine, whatever its version', () => {
  const later = { ...seen, chromium: { ...seen.chromium, version: '157.1' } };
  for (const [file, rowsOf] of Object.entries(tables))
    assert.deepEqual(byEngine(rowsOf(later)), byEngine(rowsOf(seen)), file);

  const whole = byEngine(tables['DEVELOPERS.md'](seen));
  assert.deepEqual(Object.keys(whole), ['chromium', 'webkit-old']);
  assert.equal(whole.chromium.undo, 'works');
  assert.equal(whole['webkit-old'].undo, 'works');
  assert.equal(
    whole['webkit-old']['card as QR codes, and back'],
    'falls back: "Save it | as a file."',
  );
  assert.equal(whole['webkit-old'][walk[0].id], 'missing: "Nothing.", of the port');
  assert.equal(whole['webkit-old'][walk[1].id], '–', 'what it does not walk');

  const short = byEngine(tables['README.md'](seen));
  assert.equal(short.chromium.works, `${walk.length} of ${walk.length}`);
  assert.deepEqual(short['webkit-old'], {
    'stands for': 'Safari of iOS 16.0',
    works: '1 of 3',
    'falls back': 'card as QR codes, and back',
    missing: walk[0].id,
  });
});

test('a text without marks, or with two tables, is refused', () => {
  for (const text of ['Nothing.', empty + empty])
    assert.throws(() => withTable(text, [['a'], ['b']]), /no one table/, text);
});
