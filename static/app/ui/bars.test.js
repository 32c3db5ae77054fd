// How much of the window the bars may take.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { room } from './bars.js';

const height = fc.integer({ min: 0, max: 300 });
const bars = fc.record({
  above: fc.array(height, { maxLength: 3 }),
  actions: height,
  tabs: height,
  height: fc.integer({ min: 100, max: 2000 }),
  before: fc.constantFrom(null, 'above', 'all'),
});

test('bars never cover more than a third of the window', () => {
  fc.assert(
    fc.property(bars, (given) => {
      const { above, below, tabs, letGo } = room(given);
      assert.ok(above + below <= given.height / 3);
      if (letGo) assert.equal(above, 0);
      if (letGo === 'all') assert.deepEqual([below, tabs], [0, 0]);
      else assert.deepEqual([below, tabs], [given.actions + given.tabs, given.tabs]);
    }),
  );
});

test('they hold on where they take less, those above let go first, and all hold again', () => {
  const small = { above: [50], actions: 70, tabs: 60, height: 740, before: 'all' };
  const held = { above: 50, below: 130, tabs: 60, letGo: null };
  assert.deepEqual(room(small), held);
  assert.deepEqual(room({ ...small, height: 500 }), { ...held, above: 0, letGo: 'above' });
  assert.equal(room({ ...small, height: 380 }).letGo, 'all');
});

test('what holds never depends on what held, but close to the third', () => {
  fc.assert(
    fc.property(bars, (given) => {
      const { above, actions, tabs, height: whole } = given;
      const low = actions + tabs;
      const all = low + above.reduce((a, b) => a + b, 0);
      const close = [low, all].some((px) => px > whole * 0.29 && px <= whole / 3);
      const [one, ...others] = [null, 'above', 'all'].map(
        (before) => room({ ...given, before }).letGo,
      );
      assert.ok(close || others.every((other) => other === one));
    }),
  );
});
