import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { route } from '../app/router.js';
import { troubleAt } from '../app/view/trouble-address.js';
import { Trouble } from '../app/view/trouble.js';

const table = JSON.parse(readFileSync(new URL('../../specs/faults.json', import.meta.url), 'utf8'));

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
  const work = new Trouble({ ...table, faults: [] }, { redraw: () => {} });
  assert.equal(work.move([]), true);
  assert.equal(work.move(['{"job":"7"}']), false, 'still the list');
  assert.deepEqual(work.state, { job: '7' });
  assert.equal(work.move(['no-such-fault', 'no JSON']), true);
  assert.deepEqual([work.fault, work.state], [undefined, {}]);
  work.move(['no-such-fault', '{"hand":7}']);
  assert.deepEqual(work.state, {}, 'what is at hand is a list or nothing');
  assert.equal(work.move(['no-such-fault', '{"hand":["oil"]}']), false, 'still that problem');
});
