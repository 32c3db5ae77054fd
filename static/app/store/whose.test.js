import assert from 'node:assert/strict';
import { test } from 'node:test';
import { whoseOf } from './whose.js';

const rows = [
  { id: 'corda' },
  { id: 'blue', card: 'corda', called: 'Blue', jobs: ['moved', 'moved-from-joined'] },
  { id: 'twice', card: 'corda', into: 'blue' },
  { id: 'heron', plate: 'AB 12' },
];
const line = (id, bike) => ({ id, bike, name: 'Tessaly Corda 570' });

test('a job is of the bike that it was moved to, else of its own, and then of where that went', () => {
  for (const [id, bike, whose] of [
    ['own', 'corda', 'corda'],
    ['own', 'unknown', 'unknown'],
    ['own', 'twice', 'blue'],
    ['moved', 'heron', 'blue'],
    ['moved-from-joined', 'twice', 'blue'],
    ['__proto__', 'constructor', 'constructor'],
  ])
    assert.equal(whoseOf(rows)(line(id, bike)).bike, whose, `${id} of ${bike}`);
  const moved = whoseOf([{ id: 'twice', into: 'blue', jobs: ['x'] }]);
  assert.equal(moved(line('x', 'corda')).bike, 'blue', 'moved to one that was joined with another');
});

test('a line has the name of its bike, and keeps that of the model', () => {
  const { name, model } = whoseOf(rows)(line('own', 'twice'));
  assert.deepEqual([name, model], ['Blue · Tessaly Corda 570', 'Tessaly Corda 570']);
  assert.equal(whoseOf(rows)(line('own', 'corda')).name, 'Tessaly Corda 570');
});
