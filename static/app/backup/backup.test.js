// A backup goes out and comes back; a file that is not whole changes nothing.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { beforeEach, test } from 'node:test';
import { readBackup, restore } from './restore.js';
import { seal, digestOf } from './seal.js';
import { kinds } from './tally.js';
import { makeBackup } from './write.js';
import { unsaved } from './unsaved.js';
import { write } from '../store/database.js';
import { Job } from '../store/job.js';
import { photoRoom, photosOf } from '../store/photos.js';
import * as store from '../store/store.js';
import * as whole from '../store/whole.js';
import { coreInNode } from '../../test/core-in-node.js';
import { FakeWorker } from '../../test/fake-worker.js';

const ask = await coreInNode();
globalThis.document = { visibilityState: 'hidden' };
globalThis.Worker = function () {
  return new FakeWorker(({ op, input }) => ({ output: ask(op, input) }));
};

const { removeAll } = whole;
beforeEach(() => removeAll());

const card = JSON.parse(
  readFileSync(new URL('../../../specs/cards/tessaly-corda-570.json', import.meta.url), 'utf8'),
);
const made = '2026-11-25T12:00:00.000Z';
const time = (n) => `2026-11-20T10:00:${String(n).padStart(2, '0')}.000Z`;

const jobOf = (id, place = 'garage') => ({
  id,
  name: `${card.make} ${card.model}`,
  started: time(0),
  card,
  bench: { system: 'metric', place },
});

const steps = ['identify', 'lay-out', 'tray', 'look-oil', 'count'];
const eventOf = (job, n) =>
  n % 4 === 3
    ? { job, id: `e${n}`, time: time(n), kind: 'photo', step: 'look-oil', what: 'pan' }
    : { job, id: `e${n}`, time: time(n), kind: 'done', step: steps[n % steps.length] };

const jpeg = (...bytes) =>
  new Blob([Uint8Array.from([255, 216, ...bytes])], { type: 'image/jpeg' });
const photoOf = (job, n) => ({ job, id: `e${n}`, what: 'pan', blob: jpeg(n, 0, 128), bytes: 5 });

/** Fills the store: {jobs: {id: [numbers of events]}, cards: [[key, day, pinned]], settings}. */
async function fill({ jobs = {}, cards = [], settings = {} }) {
  for (const [id, numbers] of Object.entries(jobs)) {
    const events = numbers.map((n) => eventOf(id, n));
    const photos = numbers.filter((n) => n % 4 === 3).map((n) => photoOf(id, n));
    await whole.putAll({ jobs: [{ ...jobOf(id), summary: {} }], events, photos });
  }
  for (const [key, day, pinned] of cards) {
    const own = { ...card, id: key, make: `Plainford ${day}` };
    const {
      text,
      place: _,
      ...bike
    } = JSON.parse(ask('cards', JSON.stringify({ cards: [own], canonical: true }))).ok.bikes[0];
    await store.putCard({
      key,
      card: own,
      text,
      bike,
      changed: `2026-11-${day}T00:00:00.000Z`,
      pinned,
    });
  }
  for (const [key, value] of Object.entries(settings)) await store.saveSetting(key, value);
}

/** All that the store holds, pictures by their bytes; the summaries only where `summaries`. */
async function held(summaries = false) {
  const all = {};
  for (const name of ['jobs', 'cards', 'lines', 'photos', 'beside', 'aside']) {
    all[name] = [];
    for await (const part of whole.chunks(name, 100)) all[name].push(...part);
  }
  all.events = (await whole.eventsOf(all.jobs.map(({ id }) => id))).flat();
  for (const photo of all.photos) photo.blob = [photo.blob.type, ...(await bytesOf(photo.blob))];
  if (!summaries) for (const job of all.jobs) delete job.summary;
  return all;
}

/** How many of each kind a review finds to be new. */
const added = ({ tally }) => Object.fromEntries(kinds.map((kind) => [kind, tally.of(kind).added]));

const bytesOf = async (blob) => new Uint8Array(await blob.arrayBuffer());
const settings = async () => Object.fromEntries(await whole.allSettings());
const full = {
  jobs: { a: [0, 1, 2, 3], b: [7] },
  cards: [['x', '20', true]],
  settings: { system: 'us' },
};

test('what goes out comes back the same: jobs, events, cards, photos, settings, and what follows from them', async () => {
  await fill(full);
  const before = await held();
  const file = await makeBackup({ made, photos: true });
  await removeAll();
  const review = await readBackup(file);
  assert.deepEqual(added(review), {
    jobs: 2,
    events: 5,
    facts: 0,
    cards: 1,
    photos: 2,
    settings: 1,
  });
  assert.deepEqual((await held()).jobs, [], 'nothing is changed by reading');
  await restore(review);
  assert.deepEqual(await held(), before);
  assert.deepEqual(await settings(), { system: 'us' });
  const { summary } = await store.job('a');
  assert.equal(summary.done, 3, 'the summary is made anew');
  assert.ok(summary.steps > 20);
});

test('a store with a draft of a card that says next to nothing comes back the same', async () => {
  const draft = {
    key: 'd',
    card: { id: 'own-d', layout: '' },
    text: '',
    changed: time(1),
    pinned: false,
  };
  const bike = { id: 'own-d', name: 'undefined undefined', layout: 'layout.', unfinished: true };
  await store.putCard({ ...draft, bike });
  const before = await held();
  const file = await makeBackup({ made, photos: true });
  await removeAll();
  await restore(await readBackup(file));
  assert.deepEqual((await held()).cards, before.cards);
});

test('photos can stay out; those that are here stay', async () => {
  await fill(full);
  const file = await makeBackup({ made, photos: false });
  const before = await held();
  await restore(await readBackup(file));
  assert.deepEqual(await held(), before);
  await removeAll();
  await restore(await readBackup(file));
  assert.deepEqual((await held()).photos, []);
  assert.equal((await held()).events.length, 5);
});

test('the settings of this phone stay, and where it stands with its backups too', async () => {
  await fill({ settings: { system: 'us', doneBy: 'A', backup: { time: time(1) } } });
  const file = await makeBackup({ made, photos: true });
  assert.ok(
    !gunzipSync(await bytesOf(file))
      .toString()
      .includes('"key":"backup"'),
  );
  await removeAll();
  await fill({ settings: { system: 'metric', backup: { time: time(2) } } });
  await restore(await readBackup(file));
  assert.deepEqual(await settings(), { system: 'metric', doneBy: 'A', backup: { time: time(2) } });
});

test('any gzip reads it: JSON Lines, and the seal at the end', async () => {
  await fill(full);
  const lines = gunzipSync(await bytesOf(await makeBackup({ made, photos: true })))
    .toString()
    .trimEnd()
    .split('\n');
  const kinds = lines.map((line) => Object.keys(JSON.parse(line))[0]);
  const want = 'format setting card job event event event event job event photo photo end seal';
  assert.equal(kinds.join(' '), want);
});

const fault = (file) =>
  readBackup(file).then(
    () => undefined,
    ({ message }) => message,
  );

for (const plain of [true, false])
  test(`every single bit that flips in a ${plain ? 'plain' : 'gzipped'} file is found, and every cut`, async () => {
    await fill({ jobs: { a: [1] }, settings: { system: 'us' } });
    // A small card keeps the file small, and the test quick.
    await whole.putAll({ jobs: [{ ...jobOf('a'), card: { id: 'one' } }] });
    const bytes = await bytesOf(await makeBackup({ made, photos: true, plain }));
    assert.equal(await fault(new Blob([bytes])), undefined);
    const words = ['restore.damaged', 'restore.not-one', 'restore.newer'];
    for (let bit = 0; bit < bytes.length * 8; bit++) {
      bytes[bit >> 3] ^= 1 << (bit & 7);
      assert.ok(words.includes(await fault(new Blob([bytes]))), `bit ${bit}`);
      bytes[bit >> 3] ^= 1 << (bit & 7);
    }
    for (let length = 0; length < bytes.length; length++)
      assert.ok(
        words.includes(await fault(new Blob([bytes.subarray(0, length)]))),
        `cut to ${length}`,
      );
    assert.equal(await fault(new Blob([bytes, ' '])), 'restore.damaged', 'longer');
  });

/** A plain file of these lines, sealed. */
async function sealed(...lines) {
  const body = new Blob(
    lines.map((line) => `${typeof line === 'string' ? line : JSON.stringify(line)}\n`),
  );
  return new Blob([body, seal(await digestOf(body, body.size), false)]);
}

const head = { format: 'tidysump-backup', version: 1, made };
const none = { settings: 0, cards: 0, jobs: 0, events: 0, photos: 0 };
const end = (counts = {}) => ({ end: { ...none, ...counts } });

for (const [name, word, ...lines] of [
  ['a newer version', 'restore.newer', { ...head, version: 4 }, { wheels: 2 }],
  ['no version', 'restore.damaged', { ...head, version: undefined }, end()],
  ['something else', 'restore.not-one', { format: 'tidysump-cards', version: 1 }],
  ['no JSON', 'restore.damaged', '{nothing'],
  ['no end', 'restore.damaged', head],
  ['an end that counts otherwise', 'restore.damaged', head, end({ jobs: 1 })],
  [
    'something after the end',
    'restore.damaged',
    head,
    end({ settings: 1 }),
    { setting: { key: 'a', value: 1 } },
  ],
])
  test(`a sealed file with ${name} changes nothing: ${word}`, async () => {
    await fill(full);
    const before = await held(true);
    assert.equal(await fault(await sealed(...lines)), word);
    assert.deepEqual(await held(true), before);
  });

for (const [name, bytes] of Object.entries({
  nothing: '',
  text: 'hello',
  'an empty object': '{}',
  gzip: Uint8Array.of(31, 139, 8),
}))
  test(`a file of ${name} is refused`, async () => {
    assert.match(await fault(new Blob([bytes])), /^restore\.(not-one|damaged)$/);
  });

test('what a hostile file says a picture is, it is a JPEG', async () => {
  const photo = { job: 'a', id: '1', what: 'pan', type: 'text/html', data: btoa('<script>') };
  const file = await sealed(head, { photo }, end({ photos: 1 }));
  await restore(await readBackup(file));
  assert.equal((await photosOf('a'))[0].blob.type, 'image/jpeg');
});

test('a card that a hostile file describes is described by the core', async () => {
  const own = {
    key: 'k',
    card: { ...card, make: 'Real' },
    bike: { name: { toString: 1 } },
    changed: time(1),
    pinned: false,
  };
  await restore(await readBackup(await sealed(head, { card: own }, end({ cards: 1 }))));
  assert.equal((await store.card('k')).bike.name, `Real ${card.model}`);
});

test('a restore that breaks off leaves what was there, and the next one does the rest', async (t) => {
  await fill(full);
  const before = await held();
  const file = await makeBackup({ made, photos: true });
  await removeAll();
  await fill({ jobs: { c: [3] } });
  const review = await readBackup(file);
  const { put } = IDBObjectStore.prototype;
  const { mock } = t.mock.method(IDBObjectStore.prototype, 'put', function (...values) {
    if (this.name === 'photos') throw new DOMException('planted', 'QuotaExceededError');
    return put.apply(this, values);
  });
  await assert.rejects(restore(review), { name: 'QuotaExceededError' });
  assert.equal((await photosOf('c')).length, 1);
  mock.restore();
  await restore(review);
  const { jobs, photos } = await held();
  assert.deepEqual(
    jobs.filter(({ id }) => id !== 'c'),
    before.jobs,
  );
  assert.equal(photos.length, 3);
});

test('many pictures pass in parts: none is held in memory for long', async () => {
  await fill({ jobs: { a: [0] } });
  const bytes = new Uint8Array(300_000).map((_, n) => (n * 31) >> 3);
  for (let n = 0; n < 120; n++)
    await write(['photos'], (tx) =>
      tx.objectStore('photos').put({
        job: 'a',
        id: `p${n}`,
        what: 'pan',
        blob: new Blob([bytes, `${n}`]),
        bytes: bytes.length,
      }),
    );
  const file = await makeBackup({ made, photos: true });
  const { tally } = await readBackup(file);
  assert.equal(tally.of('photos').held, 120);
  assert.equal((await photoRoom()).get('a').count, 120);
});

const sample = (version) =>
  new Blob([readFileSync(new URL(`../../../testdata/backup-${version}.txt`, import.meta.url))]);

test('a backup of version 1 restores, whatever the page writes today', async () => {
  const review = await readBackup(sample(1));
  assert.equal(review.backup.made, made);
  assert.deepEqual(added(review), {
    jobs: 2,
    events: 5,
    facts: 0,
    cards: 1,
    photos: 2,
    settings: 1,
  });
  await restore(review);
  const [photo] = await photosOf('a');
  assert.deepEqual([...(await bytesOf(photo.blob))], [255, 216, 3, 0, 128]);
  assert.equal((await store.job('a')).summary.done, 3);
});

test('a backup of version 3 restores: each job finds its bike, and what is told of it', async () => {
  const review = await readBackup(sample(3));
  const { facts, photos, jobs } = added(review);
  assert.deepEqual([facts, photos, jobs], [6, 2, 2]);
  assert.equal(review.tally.of('facts').beside, 1);
  await restore(review);
  const lines = (await store.log()).map(({ id, bike, name }) => [id, bike, name]);
  assert.deepEqual(lines, [
    ['b', 'twin', 'the green one · KX 12 · Tessaly Corda 650'],
    ['a', 'tessaly-corda-650', 'Tessaly Corda 650'],
  ]);
  const again = await readBackup(await makeBackup({ made, photos: true }));
  assert.ok(again.tally.nothingNew);
  assert.equal((await photosOf('twin')).length, 1);
});

test('a backup of version 2 restores: what is beside and aside in it, too', async () => {
  const review = await readBackup(sample(2));
  assert.deepEqual(added(review), {
    jobs: 1,
    events: 3,
    facts: 0,
    cards: 1,
    photos: 1,
    settings: 1,
  });
  assert.equal(review.tally.of('events').beside, 1);
  assert.equal(review.tally.of('jobs').beside, 1);
  assert.equal(review.tally.unreadCount, 1);
  await restore(review);
  const { beside, aside, jobs } = await held(true);
  assert.deepEqual(
    beside.map(({ kind, id }) => [kind, id]),
    [
      ['event', 'e2'],
      ['job', ''],
    ],
  );
  assert.deepEqual(
    aside.map(({ kind, text }) => [kind, text]),
    [['wheel', '{"wheel":{"id":"1"}}']],
  );
  assert.deepEqual(jobs[0].steps, ['identify', 'lay-out', 'tray', 'look-oil']);
  assert.equal(jobs[0].summary.disputed, 1);
  const again = await makeBackup({ made, photos: true, plain: true });
  const lines = (text) =>
    text.split('\n').filter((line) => /^\{"(job|event|beside|photo)"/.test(line));
  assert.deepEqual(lines(await again.text()), lines(await sample(2).text()));
});

test('finished jobs are in a backup when this phone handed one out that holds all of each, and never by a restore', async () => {
  const finish = { job: 'a', id: 'end', time: time(50), kind: 'finish' };
  await fill({ jobs: { a: [0, 1] } });
  await whole.putAll({ events: [finish] });
  const theirs = await makeBackup({ made, photos: true });
  await removeAll();
  await restore(await readBackup(theirs));
  const count = async () => (await unsaved(await store.log())).count ?? 0;
  assert.equal(await count(), 1, 'what came from elsewhere is in no file of this phone');
  const holds = [];
  await makeBackup({ made, photos: true, note: (id, events) => holds.push({ id, events, made }) });
  assert.deepEqual(holds, [{ id: 'a', events: 3, made }]);
  assert.equal(await count(), 1, 'it was not handed out');
  await whole.putSaved(holds);
  assert.equal(await count(), 0);
  const job = await Job.open('a');
  await job.add({ kind: 'note', text: 'later' });
  assert.equal(await count(), 1, 'an entry came since');
});
