import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { linesOf, pieces, wordsOf } from './lines.js';

const drawn = (list) => list.map(({ words }) => words.map((word) => word.text).join('')).join('');

test('whatever is marked, each line is drawn whole, and each word says where it stands', () => {
  const marks = fc.array(
    fc.tuple(fc.nat(60), fc.nat(60), fc.constantFrom('sure', 'ask')).map(([a, b, kind]) => ({
      from: Math.min(a, b),
      to: Math.max(a, b),
      kind,
    })),
  );
  fc.assert(
    fc.property(
      fc.string({ unit: fc.constantFrom('a', '5', ' ', '\n', '·') }),
      marks,
      (text, all) => {
        const lines = linesOf(text);
        assert.equal(lines.map((line) => line.text).join('\n'), text);
        for (const line of lines) {
          const list = pieces(line, all);
          assert.equal(drawn(list), line.text);
          for (const { words } of list)
            for (const { text: word, from } of words)
              assert.equal(text.slice(from, from + word.length), word);
        }
      },
    ),
  );
});

test('what is marked is what was read', () => {
  const [, line] = linesOf('Torques\nDrain bolt ... 25 N·m');
  const from = line.start + line.text.indexOf('25');
  const list = pieces(line, [{ from, to: from + 6, kind: 'sure' }]);
  assert.deepEqual(
    list.map(({ kind, words }) => [kind, words.map(({ text }) => text).join('')]),
    [
      ['', 'Drain bolt ... '],
      ['sure', '25 N·m'],
    ],
  );
  assert.deepEqual(
    wordsOf(line).map(({ text }) => text),
    ['Drain', 'bolt', '...', '25', 'N·m'],
  );
});
