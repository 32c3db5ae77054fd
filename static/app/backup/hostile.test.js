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
import { allCards } from '../store/all-cards.js';
import { besideOf, eventsOf } from '../store/job-events.js';
import * as store from '../store/store.js';
import * as whole from '../store/whole.js';
import { backupOf, lineOf, made } from '../../test/backup-file.js';
import { coreInNode } from '../../test/core-in-node.js';
import { FakeWorker } from '../../test/fake-worker.js';

const ask = await coreInNode();
globalThis.document = { visibilityState: 'hidden' };
globalThis.Worker = function () {
  return new FakeWorker(({ op, input }) => ({ output: ask(op, input) }));
};

beforeEach(() => whole.removeAll());

const card = JSON.parse(
  readFileSync(new URL('../../../specs/cards/tessaly-corda-570.json', import.meta.url), 'utf8'),
);
const time = (n) => `2026-11-20T10:00:${String(n).padStart(2, '0')}.000Z`;
const jobOf = (id, more) => ({
  id,
  name: 'Tessaly Corda 570',
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
const told = (book, of, id, more) => ({
  book,
  of,
  id,
  kind: 'told',
  time: time(1),
  day: '2026-11-20',
  seq: 1,
  what: 'called',
  value: 'Green',
  ...more,
});
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
  for await (const facts of whole.chunks('facts', 100)) for (const fact of facts) add('fact', fact);
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
    { aside: { kind: 'fact', text: lineOf({ fact: told('bike', 'a', '3') }) } },
    { aside: { kind: 'fact', text: lineOf({ fact: told('bike', 'a', '4', { value: 7 }) }) } },
  ),
  card: fc
    .tuple(few('x', 'y'), few({}, { make: 'Plainford' }, { make: 7 }, { bolts: 7 }, { layout: '' }))
    .map(([key, more]) => ({
      card: { key, card: { ...card, ...more }, changed: time(1), pinned: false },
    })),
  fact: fc
    .tuple(
      few('bike', 'visit', '__proto__'),
      ids,
      few('1', '__proto__'),
      few(
        {},
        { value: 'Red' },
        { value: 'Blue', later: { wheels: 2 } },
        { seq: 1e300 },
        { kind: 'wheel' },
        { kind: 'undo', what: '1' },
        { kind: 'joined', value: 'constructor' },
        { text: 'half \ud83d' },
        { value: 7 },
        { time: 'never' },
        { signs: { toString: 1 } },
        { id: '' },
      ),
    )
    .map(([book, of, id, more]) => ({ fact: told(book, of, id, more) })),
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
const order = ['card', 'fact', 'aside', 'job', 'event', 'beside', 'photo', 'line'];

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
      for (const event of await eventsOf(job.id))
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

const unreadOf = async (...records) => (await readBackup(await backupOf(records))).tally;

/** Restores records on a phone that holds a job with an entry, and looks at what became of it. */
async function afterRestoring(...records) {
  await restoredOf({ job: jobOf('mine') }, { event: note('mine', '1', 'mine') });
  const before = await eventsOf('mine');
  const tally = await restoredOf(...records);
  const job = await Job.open('mine');
  assert.ok(job?.state, 'my job opens');
  for (const event of before)
    assert.deepEqual(
      job.events.find(({ id }) => id === event.id),
      event,
    );
  return { job, tally };
}

for (const [name, record, spoilt = true] of [
  ['a member of another type', { event: note('mine', '2', 7) }],
  ['half an emoji at the end of a note', { event: note('mine', '2', 'half \ud83d') }, false],
  ['a note of 30 000 letters', { event: note('mine', '2', 'x'.repeat(30_000)) }],
  [
    'an event of the year 9999',
    { event: { ...note('mine', '2', 'late'), time: '9999-12-31T23:59:59.999Z' } },
    false,
  ],
  ['an event of a kind to come', { event: { ...note('mine', '2', 'x'), kind: 'wheel' } }, false],
  ['an event whose time is a number', { event: { ...note('mine', '2', 'x'), time: 7 } }],
  ['an event that is deep', `{"event":{"job":"mine","id":"2","text":${deep}}}`],
  ['an event without an id', { event: { job: 'mine', kind: 'note' } }],
  ['a setting that is no list', { setting: { key: 'due', value: { length: 1 } } }],
  ['a setting of a name that every object has', { setting: { key: 'toString', value: 1 } }],
  ['an odd card', { card: { key: 'odd', card: { ...card, bolts: 7 }, changed: time(1) } }],
  ['a card that is none', { card: { key: 'odd', card: 7, changed: time(1) } }],
  ['a photo that is none', { photo: { job: 'mine', id: '1', what: 'pan', data: '*' } }],
  ['a line that is no JSON', '{"event":{'],
  ['something that another version may know', { wheel: { id: '1' } }],
  ['a job without a card', { job: { ...jobOf('other'), card: null } }],
  [
    'a job whose card says nothing that is known',
    { job: jobOf('other', { card: { ...card, layout: 'hovercraft' } }) },
  ],
])
  test(`${name} spoils only itself: the job opens, and what stands behind it comes in`, async () => {
    const behind = [{ job: jobOf('behind') }, { event: note('behind', '1', 'came') }];
    const lines = [{ job: jobOf('mine') }, record, ...behind].sort((a, b) => rank(a) - rank(b));
    const { job, tally } = await afterRestoring(...lines);
    assert.equal(tally.unreadCount, spoilt ? 1 : 0, JSON.stringify(tally.unread));
    assert.equal((await whole.aside()).length, spoilt ? 1 : 0);
    assert.equal((await eventsOf('behind')).length, 1);
    assert.equal(
      (await job.add({ kind: 'note', text: 'on' })).some(({ grade }) => grade === 'refuse'),
      false,
    );
    assert.ok(job.state?.notes?.some(({ text }) => text === 'on'));
  });

const rank = (line) => order.indexOf(/^\{"(\w+)/.exec(lineOf(line))?.[1] ?? '');

test('of a job with more entries than it may have, as many come in as it can have; the others lie aside', async () => {
  const text = 'x'.repeat(15_000);
  const many = Array.from({ length: 400 }, (_, n) => ({ event: note('a', `n${n}`, text) }));
  const tally = await restoredOf({ job: jobOf('a') }, ...many);
  const job = await Job.open('a');
  assert.ok(job?.state);
  assert.ok(job.events.length > 200 && job.events.length < 400, `${job.events.length} came in`);
  assert.equal(tally.unreadCount, 400 - job.events.length);
  assert.equal((await whole.aside()).length, tally.unreadCount);
});

test('the same job with another card: mine stays, to the letter, and the other lies beside it', async () => {
  await restoredOf({ job: jobOf('a') }, { event: note('a', '1', 'mine') });
  const before = await store.job('a');
  const review = await readBackup(await backupOf([{ job: jobOf('a', { card: otherCard }) }]));
  assert.equal(review.tally.of('jobs').beside, 1);
  assert.ok(!review.tally.nothingNew);
  await restore(review);
  assert.deepEqual((await store.job('a'))?.card, before?.card);
  const [beside] = await besideOf('a');
  assert.deepEqual(JSON.parse(beside.text).card, otherCard);
});

test('an event of the same id with other content does not replace mine, and is told as disputed', async () => {
  await restoredOf({ job: jobOf('a') }, { event: note('a', '1', 'mine') });
  await restoredOf({ job: jobOf('a') }, { event: note('a', '1', 'theirs') });
  assert.deepEqual(
    (await eventsOf('a')).map(({ text }) => text),
    ['mine'],
  );
  const job = await Job.open('a');
  assert.equal(job?.state?.disputed?.length, 1);
  assert.equal((await store.job('a'))?.summary?.disputed, 1);
});

test('two edits of a card stay as two versions, however often they meet', async () => {
  const edit = (make) => ({ card: { key: 'k', card: { ...card, make }, changed: time(1) } });
  for (const make of ['Plainford', 'Ondrake', 'Plainford', 'Ondrake']) await restoredOf(edit(make));
  const cards = await allCards();
  assert.deepEqual(cards.map(({ card: { make } }) => make).sort(), ['Ondrake', 'Plainford']);
  assert.equal((await store.card('k'))?.card.make, 'Plainford');
});

test('a job that stands twice in a file is one job, wherever its lines stand', async () => {
  const lines = [
    { job: jobOf('a') },
    { event: note('a', '1', 'one') },
    { job: jobOf('b') },
    { job: jobOf('a') },
    { event: note('a', '1', 'one') },
    { event: note('a', '2', 'two') },
  ];
  const { tally } = await readBackup(await backupOf(lines));
  assert.deepEqual(tally.of('jobs'), { held: 2, added: 2, beside: 0, unread: 0 });
  assert.deepEqual(tally.of('events'), { held: 2, added: 2, beside: 0, unread: 0 });
  await restoredOf(...lines);
  assert.equal((await store.job('a'))?.summary?.events, 2);
  assert.ok((await unreadOf(...lines)).nothingNew);
});

test('what lay aside for want of its job comes in with it', async () => {
  await restoredOf({ event: note('a', '1', 'early') });
  assert.equal((await whole.aside()).length, 1);
  await restoredOf({ job: jobOf('a') });
  assert.deepEqual(await whole.aside(), []);
  assert.deepEqual(
    (await eventsOf('a')).map(({ text }) => text),
    ['early'],
  );
});

test('what lies aside is tried again by itself, and stays when it still can not be read', async () => {
  await restoredOf({ event: note('a', '1', 'early') }, { event: note('a', '2', 7) });
  await whole.putAll({ jobs: [{ ...jobOf('a'), summary: {} }] });
  await retryAside();
  assert.deepEqual(
    (await whole.aside()).map(({ text }) => JSON.parse(text).event.id),
    ['2'],
  );
  assert.deepEqual(
    (await eventsOf('a')).map(({ text }) => text),
    ['early'],
  );
});

test('a file that was saved in an emergency is read, without seal or end, and says so', async () => {
  const rescued = { format: 'tidysump-backup', version: 2, made, rescue: true };
  const bundle = { job: 'a', events: [{ id: '1', kind: 'note', time: time(1), text: 'saved' }] };
  const lines = [
    rescued,
    { event: note('b', '1', 'before its job') },
    { job: jobOf('a') },
    { bundle },
    { job: jobOf('b') },
  ];
  const text = lines.map((line) => `${JSON.stringify(line)}\n`).join('');
  const review = await readBackup(new Blob([text, '{"event":{"job":"a","id":"2","te']));
  assert.ok(review.backup.rescued);
  assert.equal(review.tally.unreadCount, 1, 'the line that is cut');
  await restore(review);
  assert.deepEqual(
    (await eventsOf('a')).map(({ text: said }) => said),
    ['saved'],
  );
  assert.deepEqual(
    (await eventsOf('b')).map(({ text: said }) => said),
    ['before its job'],
  );
  const sealless = { ...rescued, rescue: undefined };
  await assert.rejects(readBackup(new Blob([`${JSON.stringify(sealless)}\n`])), {
    message: 'restore.damaged',
  });
});

test('a review and a restore that are stopped leave nothing half known', async () => {
  const lines = Array.from({ length: 300 }, (_, n) => [
    { job: jobOf(`j${n}`) },
    { event: note(`j${n}`, '1', 'x') },
  ]).flat();
  const file = await backupOf(lines);
  const stop = new AbortController();
  await assert.rejects(readBackup(file, { signal: stop.signal, progress: () => stop.abort() }), {
    name: 'AbortError',
  });
  assert.deepEqual(await contents(), []);
  const review = await readBackup(file);
  const again = new AbortController();
  const putting = restore(review, { signal: again.signal, progress: () => again.abort() });
  await assert.rejects(putting, { name: 'AbortError' });
  const after = (await contents()).length;
  for await (const jobs of whole.chunks('jobs', 500))
    for (const { id, summary } of jobs)
      assert.equal((await eventsOf(id)).length, summary?.events, id);
  await new Promise((resolve) => setTimeout(resolve, 50));
  assert.equal((await contents()).length, after, 'nothing comes afterwards');
});

/** All places of a value, each with what holds it. */
function* placesIn(value) {
  for (const name of Object.keys(value)) {
    yield [value, name];
    if (value[name] !== null && typeof value[name] === 'object') yield* placesIn(value[name]);
  }
}

const oddValue = fc.oneof(
  fc.jsonValue({ maxDepth: 2 }),
  fc.constantFrom('__proto__', 'constructor', '', -1, 1e308, '\ud83d', '9999-12-31T23:59:59.999Z', [
    [],
  ]),
);
const mutation = fc.record({
  line: fc.nat(1000),
  place: fc.nat(1000),
  how: few('replace', 'remove', 'rename', 'again', 'swap'),
  value: oddValue,
});

/** The lines of a good backup, changed here and there. */
function mutated(lines, mutations) {
  const list = structuredClone(lines);
  for (const { line, place, how, value } of mutations) {
    const at = line % list.length;
    if (how === 'again') list.push(structuredClone(list[at]));
    if (how === 'swap')
      [list[at], list[place % list.length]] = [list[place % list.length], list[at]];
    const places = [...placesIn(list[at])].slice(1);
    if (!places.length || how === 'again' || how === 'swap') continue;
    const [holder, name] = places[place % places.length];
    if (how !== 'replace') delete holder[name];
    if (how === 'rename') holder[`${name}s`] = value;
    if (how === 'replace') holder[name] = structuredClone(value); // what is put in twice must hold itself nowhere
  }
  return list;
}

test('a thousand changed backups, sealed, harm no job that is here', async () => {
  const text = readFileSync(new URL('../../../testdata/backup-2.txt', import.meta.url), 'utf8');
  const all = text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
  const lines = all.filter((line) => !line.format && !line.end && !line.seal);
  const fresh = async () => {
    await whole.removeAll();
    await restored(new Blob([text]));
  };
  await fresh();
  const before = await counting();
  let runs = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(mutation, { minLength: 1, maxLength: 4 }), async (mutations) => {
      if (++runs % 40 === 0) await fresh();
      await restored(await backupOf(mutated(lines, mutations)));
      const after = await counting();
      for (const [key, value] of before) assert.equal(after.get(key), value, key);
      if (runs % 10) return;
      for (const id of await whole.keysOf('jobs')) {
        const job = await Job.open(id);
        assert.ok(job?.state, `${id}: ${JSON.stringify(job?.findings)}`);
      }
    }),
    { numRuns: 1000 },
  );
});
