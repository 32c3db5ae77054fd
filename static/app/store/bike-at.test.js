// What an address of a bike stands for, whatever was told of it and of its twins.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { beforeEach, test } from 'node:test';
import { bikeAt } from './bike-at.js';
import { write } from './database.js';
import { putJob } from './write-job.js';
import * as store from './store.js';
import * as whole from './whole.js';
import { sampleCard } from '../../test/browser/words.js';

const samples = ['tessaly-corda-570', 'marrowick-pip-130'].map(sampleCard);
const [corda, pip] = samples;
globalThis.fetch = async () => Response.json(samples);

beforeEach(() => whole.removeAll());

const told = (...rows) =>
  write(['bikes'], (tx) => rows.forEach((row) => tx.objectStore('bikes').put(row)));

/** Keeps an own card under a key, with the day of its last change. */
const own = (key, id, changed) =>
  store.putCard({
    key,
    card: { ...corda, id },
    text: '',
    bike: { id, name: key },
    changed,
    pinned: false,
  });

const at = async (...address) => {
  const { id, key, card, row } = await bikeAt(...address);
  return [id, key, card?.id, row?.id];
};

test('the key of a card stands for the bike that the card implies', async () => {
  assert.deepEqual(await at(corda.id), [corda.id, corda.id, corda.id, undefined]);
  await own('key', 'own-1', '2026-01-01');
  assert.deepEqual(await at('key'), ['own-1', 'key', 'own-1', undefined]);
});

test('the id of a bike stands for it, with the card that it follows', async () => {
  await told({ id: 'a', card: pip.id });
  assert.deepEqual(await at('a'), ['a', pip.id, pip.id, 'a']);
});

test('of two versions of its card, the one that was changed last counts', async () => {
  await own('old', 'own-1', '2026-01-01');
  await own('new', 'own-1', '2026-02-01');
  await told({ id: 'a', card: 'own-1' });
  assert.deepEqual(await at('a'), ['a', 'new', 'own-1', 'a']);
});

test('a bike that went into another is the other; the card as such is neither', async () => {
  await told({ id: corda.id, card: corda.id, into: 'a' }, { id: 'a', card: pip.id });
  assert.deepEqual(await at(corda.id), ['a', pip.id, pip.id, 'a']);
  assert.deepEqual(await at(corda.id, true), ['', corda.id, corda.id, undefined]);
});

test('one that goes to another card is planned by that', async () => {
  await told({ id: corda.id, card: pip.id });
  assert.deepEqual(await at(corda.id), [corda.id, pip.id, pip.id, corda.id]);
});

test('a bike whose card is gone has that of its last job', async () => {
  const gone = { ...corda, id: 'gone' };
  await told({ id: 'a', card: 'gone' });
  const job = { id: 'j', bike: 'a', name: 'x', started: '2026-01-01', card: gone, bench: {} };
  await putJob(job);
  assert.deepEqual(await at('a'), ['a', '', 'gone', 'a']);
});

test('what nobody told of, and no card has for its key, is no bike', async () => {
  for (const id of ['', 'none', '__proto__']) assert.equal((await bikeAt(id)).card, undefined, id);
});
