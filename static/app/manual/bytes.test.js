import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { Bytes } from './bytes.js';

const encoded = (text) => new TextEncoder().encode(text);

test('places of letters and of bytes are those of the UTF-8 form', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), fc.nat(), fc.nat(), (text, one, other) => {
      const letters = [...text];
      const [from, to] = [one, other].map((n) => n % (letters.length + 1)).sort((a, b) => a - b);
      const quote = {
        from: encoded(letters.slice(0, from).join('')).length,
        to: encoded(letters.slice(0, to).join('')).length,
      };
      const bytes = new Bytes(text);
      assert.equal(bytes.slice(quote), letters.slice(from, to).join(''));
      assert.equal(bytes.of(bytes.at(quote.from)), quote.from);
    }),
  );
});

test('a place outside the text is its end', () => {
  const bytes = new Bytes('25 N·m');
  assert.equal(bytes.at(99), 6);
  assert.equal(bytes.of(99), 7);
  assert.equal(bytes.of(-1), 0);
});
