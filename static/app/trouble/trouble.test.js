import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { route } from '../ui/address.js';
import { readState, troubleAt } from './address.js';
import { Trouble } from './trouble.js';

const table = JSON.parse(
  readFileSync(new URL('../../../specs/faults.json', import.meta.url), 'utf8'),
);

test('the address of a problem holds all that was answered, and nothing that is empty', () => {
  const state = { answers: { tyre: 'yes' }, hand: ['oil', 'wash'], job: 'a/b', step: '50 %' };
  assert.equal(troubleAt('', {}), '#/trouble');
  assert.equal(troubleAt('spill', { job: undefined }), '#/trouble/spill');
  const [, id, rest] = route(troubleAt('spill', { ...state, door: 'drop', bike: 'b' }));
  assert.equal(id, 'spill');
  assert.deepEqual(readState(rest), { ...state, door: 'drop', bike: 'b' });
  const [, alone] = route(troubleAt('', { job: '7' }));
  assert.deepEqual(readState(alone), { job: '7' });
});

test('the address of an earlier version, which carried JSON, is still read', () => {
  const state = { answers: { tyre: 'yes' }, hand: ['oil'], job: '7', step: 'tray' };
  assert.deepEqual(readState(JSON.stringify(state)), state);
});

test('an address leads to the doors, behind one, to a problem, or says that there is none', () => {
  const problem = new Trouble({ ...table, faults: [] }, { redraw: () => {} });
  assert.equal(problem.move([]), true);
  assert.equal(problem.move(['?job=7']), true, 'from a job');
  assert.equal(problem.move(['?job=7']), false, 'still the doors');
  assert.deepEqual(problem.state, { job: '7' });
  assert.equal(problem.move(['?job=7&door=drop']), true, 'behind a door');
  assert.equal(problem.move(['no-such-fault', 'no JSON']), true);
  assert.deepEqual([problem.fault, problem.state], [undefined, {}]);
  assert.equal(problem.move(['no-such-fault', '?hand=oil']), false, 'still that problem');
});
