import assert from 'node:assert/strict';
import { test } from 'node:test';
import { listText } from './list.js';

for (const [lang, want] of [
  ['en', 'Dutch, Émile, and Italian'],
  ['de', 'Dutch, Émile und Italian'],
])
  test(`names in a sentence of ${lang}`, () => {
    globalThis.document = /** @type {any} */ ({ documentElement: { lang } });
    assert.equal(listText(['Italian', 'Émile', 'Dutch']), want);
    assert.equal(listText(['Italian']), 'Italian');
    assert.equal(listText([]), '');
  });
