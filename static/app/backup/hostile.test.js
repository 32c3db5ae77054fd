// Whole but hostile backups: nothing that is here is replaced or removed, nothing is lost,
// and what can't be read spoils only itself.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { beforeEach, test } from 'node:test';
import fc from 'fast-check';
import { canonical } from './merge.js';
import { readBackup, restore, retryAside } from './restore.js';
import { makeBackup } from './write.js';
import { Job } from '../store/job.js';
import * as store from '../store/store.js';
import * as whole from '../store/whole.js';
import { backupOf, lineOf, made, sealed } from '../../test/backup-file.js';
import { coreInNode } from '../../test/core-in-node.js';
import { FakeWorker } from '../../test/fake-worker.js';

const ask = await coreInNode();
globalThis.document = { visibilityState: 'hidden' };
globalThis.Worker = function () {
  return new FakeWorker(({ op, input }) => ({ output: ask(op, input) }));
};

beforeEach(() => whole.removeAll());

const card = JSON.parse(
  readFileSync(new URL('../../../specs/cards/tessaly-corda-650.json', import.meta.url), 'utf8'),
);
const time = (n) => `2026-11-20T10:00:${String(n).padStart(2, '0')}.000Z`;
const jobOf = (id, more) => ({
  id,
  name: 'Tessaly Corda 650',
  started: time(0),
  card,
  bench: { system: 'metric', place: 'garage' },
  ...more,
});
const done = (job, id, more) => ({
  job,
  id,
  time: time(1),
  kind: 'done',
  step: 'identify',
  ...more,
});
const note = (job, id, text) => ({ job, id, time: time(2), kind: 'note', text });
const otherCard = { ...card, bolts: card.bolts.slice(1) };
const deep = `${'['.repeat(60)}${']'.repeat(60)}`;
const jpeg = (...bytes) => Buffer.from([255, 216, ...bytes]).toString('base64');

const restored = async (file) => restore(await readBackup(file));
const restoredOf = async (...records) => restored(await backupOf(records));

/** All contents that a store holds, wherever: what came in is in it, readable or not. */
async function contents() {
  const all = new Map();
  const add = (...parts) => all.set(canonical(parts), parts);
  const ids = [];
  for await (const jobs of whole.chunks('jobs', 100))
    for (const { summary: _, ...job } of jobs) {
      ids.push(job.id);
      add('job', job);
    }
  for (const event of (await whole.eventsOf(ids)).flat()) add('event', event);
  for await (const rows of whole.chunks('beside', 100))
    for (const { job, kind, text } of rows) {
      const value = JSON.parse(text);
      add(kind, kind === 'event' ? { ...value, job } : value);
    }
  for await (const cards of whole.chunks('cards', 100))
    for (const each of cards) add('card', each.card);
  for await (const photos of whole.chunks('photos', 100))
    for (const { job, id, what, blob } of photos)
      add(
        'photo',
        job,
        id.split('~')[0],
        what,
        Buffer.from(await blob.arrayBuffer()).toString('hex'),
      );
  for (const { kind, text } of await whole.aside()) addLine(add, kind, text);
  dropStepless(all);
  return [...all.keys()].sort();
}

function addLine(add, kind, text) {
  let value;
  try {
    value = JSON.parse(text)[kind];
  } catch {
    // it stands as it came
  }
  if (kind === 'beside' && value?.kind === 'event') {
    const event = JSON.parse(value.text);
    return add('event', { ...event, job: value.job });
  }
  if (kind === 'card' && value?.card) return add('card', value.card);
  return value && kind !== 'setting' ? add(kind, value) : add('line', text);
}

/** A job's record without its steps says nothing beside the same with them. */
function dropStepless(all) {
  for (const [kind, job] of [...all.values()])
    if (kind === 'job' && job.steps) {
      const { steps: _, ...less } = job;
      all.delete(canonical(['job', less]));
    }
}

const few = (...words) => fc.constantFrom(...words);
const ids = few('a', 'constructor');
const hostile = {
  job: fc
    .tuple(
      ids,
      few(
        {},
        { card: otherCard },
        { steps: ['identify', 'lay-out'] },
        { steps: ['identify'] },
        { card: { ...card, layout: 'hovercraft' } },
        { card: { ...card, circuits: 7 } },
        { card: null },
        { bench: { system: 7 } },
        { started: 'toString' },
        { name: 7 },
        { summary: { phase: 'closed', done: 99 } },
        { later: { wheels: 2 } },
      ),
    )
    .map(([id, more]) => ({ job: jobOf(id, more) })),
  event: fc
    .tuple(
      ids,
      few('1', '2', '__proto__'),
      few(
        {},
        { step: 'lay-out' },
        { kind: 'note', text: 'mine' },
        { kind: 'note', text: 7 },
        { kind: 'note', text: 'half \ud83d' },
        { time: '9999-12-31T23:59:59.999Z' },
        { time: 7 },
        { seq: 1e9 },
        { kind: 'wheel', wheels: [2] },
        { signs: ['no'] },
        { signs: { metal: 'fine' } },
        { kind: 'undo', of: '1' },
        { id: undefined },
      ),
    )
    .map(([job, id, more]) => ({ event: done(job, id, more) })),
  beside: fc.tuple(ids, few('1', '2'), few('other', 'another', 7)).map(([job, id, text]) => ({
    beside: {
      job,
      kind: 'event',
      id,
      text: JSON.stringify({ id, time: time(3), kind: 'note', text }),
    },
  })),
  aside: few(
    { aside: { kind: 'event', text: lineOf({ event: note('a', '3', 'was aside') }) } },
    { aside: { kind: 'event', text: lineOf({ event: note('a', '3', 7) }) } },
    { aside: { kind: 'line', text: '{nothing' } },
    { aside: { kind: 'wheel', text: '{"wheel":1}' } },
  ),
  card: fc
    .tuple(few('x', 'y'), few({}, { make: 'Plainford' }, { make: 7 }, { bolts: 7 }, { layout: '' }))
    .map(([key, more]) => ({
      card: { key, card: { ...card, ...more }, changed: time(1), pinned: false },
    })),
  photo: fc
    .tuple(ids, few('1', '2'), few(1, 2))
    .map(([job, id, byte]) => ({ photo: { job, id, what: 'pan', data: jpeg(byte) } })),
  line: few(
    '{nothing',
    '[]',
    '7',
    `{"event":${deep}}`,
    '{"wheel":{"id":"1"}}',
    '{"photo":{"job":"a","id":"1","what":"pan","data":"*"}}',
  ),
};
const order = ['card', 'aside', 'job', 'event', 'beside', 'photo', 'line'];

/** The lines of a file: in the order that this app writes, or in any. */
const file = fc
  .record(
    Object.fromEntries(order.map((kind) => [kind, fc.array(hostile[kind], { maxLength: 4 })])),
  )
  .chain((lists) => {
    const lines = order.flatMap((kind) => lists[kind]);
    return fc.oneof(
      fc.constant(lines),
      fc.shuffledSubarray(lines, { minLength: lines.length, maxLength: lines.length }),
    );
  });

async function heldAfter(...files) {
  await whole.removeAll();
  for (const each of files) await restored(await backupOf(each));
  return contents();
}

test('hostile files in any order, any number of times, and by way of another phone, give the same contents', async () => {
  await fc.assert(
    fc.asyncProperty(file, file, file, async (one, two, three) => {
      const all = await heldAfter(one, two, three);
      assert.deepEqual(await heldAfter(three, one, two), all, 'another order');
      assert.deepEqual(await heldAfter(two, one, two, three, three), all, 'again and again');
      const again = await makeBackup({ made, photos: true });
      const review = await readBackup(again);
      assert.ok(review.tally.nothingNew, 'a backup of this phone holds nothing new for it');
      await heldAfter(two);
      await restored(again);
      assert.deepEqual(await contents(), all, 'by way of a backup');
    }),
    { numRuns: 15 },
  );
});

test('what is here counts as before, whatever comes in', async () => {
  await fc.assert(
    fc.asyncProperty(file, file, async (mine, theirs) => {
      await whole.removeAll();
      await restored(await backupOf(mine));
      const before = await counting();
      await restored(await backupOf(theirs));
      const after = await counting();
      for (const [key, value] of before) assert.equal(after.get(key), value, key);
    }),
    { numRuns: 25 },
  );
});

/** What counts here, by its key. */
async function counting() {
  const all = new Map();
  for await (const jobs of whole.chunks('jobs', 100))
    for (const { summary: _, steps: __, ...job } of jobs) {
      all.set(`job ${job.id}`, canonical(job));
      for (const event of await store.events(job.id))
        all.set(`${job.id} ${event.id}`, canonical(event));
    }
  for await (const cards of whole.chunks('cards', 100))
    for (const { key, card: content } of cards) all.set(`card ${key}`, canonical(content));
  for (const photo of (await Promise.all(['a', 'constructor'].map(photosIn))).flat())
    all.set(`photo ${photo.job} ${photo.id}`, `${photo.what} ${photo.bytes}`);
  return all;
}

async function photosIn(id) {
  const all = [];
  for await (const photos of whole.chunks('photos', 100))
    all.push(...photos.filter(({ job }) => job === id));
  return all;
}

test('the review says what the restore does, and changes nothing', async () => {
  await fc.assert(
    fc.asyncProperty(file, file, async (mine, theirs) => {
      await whole.removeAll();
      await restored(await backupOf(mine));
      const before = await contents();
      const review = await readBackup(await backupOf(theirs));
      assert.deepEqual(await contents(), before);
      const tally = await restore(review);
      assert.deepEqual([...tally.counts], [...review.tally.counts]);
      assert.deepEqual(tally.unread, review.tally.unread);
      assert.equal(tally.nothingNew, (await contents()).join() === before.join());
    }),
    { numRuns: 25 },
  );
});

test('every job that came in opens, and takes a note', async () => {
  await fc.assert(
    fc.asyncProperty(file, async (records) => {
      await whole.removeAll();
      await restored(await backupOf(records));
      for await (const jobs of whole.chunks('jobs', 100))
        for (const { id } of jobs) {
          const job = await Job.open(id);
          assert.ok(job?.state, `${id}: ${JSON.stringify(job?.findings)}`);
          await job.add({ kind: 'note', text: 'mine' });
          assert.ok(
            job.state.notes?.some(({ text }) => text === 'mine'),
            JSON.stringify(job.state),
          );
        }
    }),
    { numRuns: 25 },
  );
});
