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
  loose: fc.boolean(),
});

test('bars never cover more than a third of the window', () => {
  fc.assert(
    fc.property(bars, (given) => {
      const { above, below, tabs, letGo } = room(given);
      assert.ok(above + below <= given.height / 3);
      if (letGo) assert.deepEqual([above, below, tabs], [0, 0, 0]);
      else assert.equal(below, given.actions + given.tabs);
    }),
  );
});

test('they hold on where they take less, and what was let go is held again', () => {
  const small = { above: [50], actions: 70, tabs: 60, height: 740, loose: true };
  assert.deepEqual(room(small), { above: 50, below: 130, tabs: 60, letGo: false });
  assert.equal(room({ ...small, height: 400 }).letGo, true);
});

test('whether they hold never depends on whether they held, but close to the third', () => {
  fc.assert(
    fc.property(bars, (given) => {
      const { above, actions, tabs, height: whole } = given;
      const share = (above.reduce((a, b) => a + b, 0) + actions + tabs) / whole;
      const held = room({ ...given, loose: false }).letGo;
      const loose = room({ ...given, loose: true }).letGo;
      assert.ok(held === loose || (share > 0.29 && share <= 1 / 3));
    }),
  );
});
