import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { route } from '../ui/address.js';
import { troubleAt } from './address.js';
import { Trouble } from './trouble.js';

const table = JSON.parse(
  readFileSync(new URL('../../../specs/faults.json', import.meta.url), 'utf8'),
);

test('the address of a problem holds all that was answered, and nothing that is empty', () => {
  const state = { answers: { tyre: 'yes' }, hand: ['oil', 'wash'], job: 'a/b', step: '50 %' };
  assert.equal(troubleAt('', {}), '#/trouble');
  assert.equal(troubleAt('spill', { job: undefined }), '#/trouble/spill');
  const [, id, text] = route(troubleAt('spill', state));
  assert.equal(id, 'spill');
  assert.deepEqual(JSON.parse(text), state);
  const [, alone] = route(troubleAt('', { job: '7' }));
  assert.deepEqual(JSON.parse(alone), { job: '7' });
});

test('an address leads to the list, to a problem, or to the list that says it has none', () => {
  const problem = new Trouble({ ...table, faults: [] }, { redraw: () => {} });
  assert.equal(problem.move([]), true);
  assert.equal(problem.move(['{"job":"7"}']), false, 'still the list');
  assert.deepEqual(problem.state, { job: '7' });
  assert.equal(problem.move(['no-such-fault', 'no JSON']), true);
  assert.deepEqual([problem.fault, problem.state], [undefined, {}]);
  problem.move(['no-such-fault', '{"hand":7}']);
  assert.deepEqual(problem.state, {}, 'what is at hand is a list or nothing');
  assert.equal(problem.move(['no-such-fault', '{"hand":["oil"]}']), false, 'still that problem');
});
