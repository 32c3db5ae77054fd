// The phone, or a part of it, dies while a person works: nothing that the page said it
// has kept is lost, nothing is there twice. `make soak` goes on with the same for as
// long as one likes.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { Chance } from '../chance.js';
import { Kills } from '../soak/kills.js';

const seed = 12;

let kills;
const endings = [];

before(async () => {
  kills = await Kills.begin({ after: (ending) => endings.push(ending) }, new Chance(seed), 40);
});

after(async () => {
  for (const ending of endings.reverse()) await ending();
});

// What is killed, and what the person begins with each time.
for (const [name, ...acts] of [
  ['browser', 'note', 'photo', 'restore', 'update', 'draft'],
  ['renderer', 'done', 'photo', 'restore', 'update', 'note'],
  ['window', 'begin', 'draft', 'reading'],
  ['core', 'restore', 'note'],
  ['core, in silence', 'restore'],
  ['service worker', 'update', 'restore', 'photo'],
])
  test(`killed, ${name}, ${acts.length} times: nothing that was kept is lost or doubled`, async () => {
    for (const act of acts) await kills.next(name, act);
    assert.deepEqual(
      [kills.harm, kills.forgotten].flatMap((list) => list.splice(0)),
      [],
      `with the seed ${seed}`,
    );
  });
