import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { cut, shortened } from './cut.js';

const pieces = [
  'a',
  'ß',
  'e\u0301',
  '漢',
  '😀',
  '👩‍🔧',
  '🇳🇴',
  '👍🏽',
  '\r\n',
  'กำ',
  '\u200d',
  '\ufe0f',
];
const texts = fc.array(fc.constantFrom(...pieces), { maxLength: 30 }).map((list) => list.join(''));
const characters = (text) =>
  [...new Intl.Segmenter('en').segment(text)].map(({ segment }) => segment);

test('a text is cut between two characters, as late as they allow, and nothing is added', () => {
  fc.assert(
    fc.property(texts, fc.integer({ min: 11, max: 60 }), (text, most) => {
      const { text: kept, left } = cut(text, most);
      assert.ok(text.startsWith(kept));
      assert.equal(kept.length + left, text.length);
      assert.ok(kept.length <= most, `${kept.length} letters`);
      const whole = characters(text);
      if ((whole[0]?.length ?? 0) > most) return; // longer than all that may be: see below
      const number = characters(kept).length;
      assert.deepEqual(characters(kept), whole.slice(0, number));
      const next = whole[number];
      if (next && kept) assert.ok(kept.length + next.length > most, `${next} has room too`);
    }),
    { numRuns: 2000 },
  );
});

test('what can be cut at no character is cut at no half of one', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 40 }), fc.nat(40), (text, most) => {
      const { text: kept } = cut(text, most);
      assert.ok(kept.isWellFormed(), JSON.stringify([text, most, kept]));
      assert.ok(kept.length <= most);
    }),
    { numRuns: 2000 },
  );
  assert.equal(cut(`e${'\u0301'.repeat(99)}`, 10).text.length, 10, 'one endless character');
});

test('what was cut says so, and fits all the same', () => {
  assert.equal(shortened('short', 5), 'short');
  assert.equal(shortened('longer', 5), 'long…');
  assert.equal(shortened(`${'x'.repeat(3)}😀😀`, 5), 'xxx…');
  assert.equal(shortened('x'.repeat(30), 20, ' (cut)'), `${'x'.repeat(14)} (cut)`);
});
