import assert from 'node:assert/strict';
import { test } from 'node:test';
import { wide } from './plate.js';

const figure = /** @type {any} */ ({ standing: 'manual' });
const words = /** @type {any} */ ({ standing: 'manual', words: true });
const unknown = /** @type {any} */ ({ standing: 'unknown' });

test('what would leave a hole beside it takes a whole row', () => {
  for (const [figures, expected] of [
    [[], []],
    [[figure], [true]],
    [
      [figure, figure],
      [false, false],
    ],
    [
      [figure, figure, words, figure, figure],
      [false, false, true, false, false],
    ],
    [
      [figure, words, figure],
      [false, false, true],
    ],
    [
      [figure, figure, words, unknown],
      [false, false, true, true],
    ],
  ])
    assert.deepEqual(wide(figures), expected, JSON.stringify(figures));
});

test('of any figures no row has a hole', () => {
  const kinds = [figure, words, unknown];
  for (let n = 0; n < 3 ** 6; n++) {
    const figures = [...n.toString(3)].map((digit) => kinds[Number(digit)]);
    const cells = wide(figures).reduce((sum, whole) => sum + (whole ? 2 : 1), 0);
    assert.equal(cells % 2, 0, JSON.stringify(figures));
  }
});
