// A phone that is used for long: what a round of screens and jobs needed is let go.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Chance } from '../chance.js';
import { grown, LongUse } from '../soak/memory.js';

const warm = 2; // rounds until all that runs now and then has run
const more = 2;

test('after some hundred acts the page and its core hold no more than after the first', async (t) => {
  const use = await LongUse.begin(t, new Chance(15), { each: 4, jobs: 2 });
  for (let n = 0; n < warm; n++) await use.round();
  const before = await use.held();
  assert.ok(before.core > 0 && before.nodes > 0, JSON.stringify(before));
  for (let n = 0; n < more; n++) await use.round();
  assert.deepEqual(grown([before], [await use.held()]), []);
});
