import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Chance } from '../chance.js';
import { Ledger } from './ledger.js';

test('what was kept must be there once, what was begun may be, and no more', () => {
  const filled = () => {
    const ledger = new Ledger();
    for (const entry of ['kept', 'begun', 'twice', 'twice']) ledger.begin(entry);
    for (const entry of ['kept', 'twice', 'twice']) ledger.kept(entry);
    return ledger;
  };
  for (const [there, lost, doubled] of [
    [['kept', 'twice', 'twice'], [], []],
    [['begun', 'kept', 'twice', 'twice'], [], []],
    [['twice'], ['kept', 'twice'], []],
    [['kept', 'kept', 'twice', 'twice', 'twice'], [], ['kept', 'twice']],
    [['begun', 'begun', 'kept', 'twice', 'twice', 'nobody'], [], ['begun', 'nobody']],
  ])
    assert.deepEqual(filled().compare(there), { lost, doubled }, String(there));
});

test('what was found there once must stay there', () => {
  const ledger = new Ledger();
  ledger.begin('begun');
  assert.equal(ledger.has('begun'), false);
  ledger.compare(['begun']);
  assert.equal(ledger.has('begun'), true);
  assert.deepEqual(ledger.compare([]), { lost: ['begun'], doubled: [] });
});

test('the same seed gives the same numbers, another seed others', () => {
  const numbers = (seed) => {
    const chance = new Chance(seed);
    return Array.from({ length: 1000 }, () => chance.below(10));
  };
  assert.deepEqual(numbers(7), numbers(7));
  assert.notDeepEqual(numbers(7), numbers(8));
  assert.deepEqual([...new Set(numbers(7))].sort(), [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
});
