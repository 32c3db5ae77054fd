// What tells of persons: never in a file that was said to be without it, and gone by one act.
// The store is filled with a value of its own for all that the core names, and then every
// byte is looked through.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { beforeEach, test } from 'node:test';
import { gunzipSync } from 'node:zlib';
import { bikeFile } from '../backup/one-bike.js';
import { readBackup, restore } from '../backup/restore.js';
import { makeBackup } from '../backup/write.js';
import { limits, loadLimits } from '../core/limits.js';
import { sampleCard } from '../../test/browser/words.js';
import { coreInNode } from '../../test/core-in-node.js';
import { FakeWorker } from '../../test/fake-worker.js';
import { bikeRow, freshBikes } from './bikes.js';
import { use } from './database.js';
import { factsOf } from './facts.js';
import { anyPersons, erasePersons, personal, personsHere } from './persons.js';
import { eventsOf } from './job-events.js';
import * as store from './store.js';
import * as whole from './whole.js';

const ask = await coreInNode();
globalThis.document = { visibilityState: 'hidden' };
globalThis.Worker = function () {
  return new FakeWorker(({ op, input }) => ({ output: ask(op, input) }));
};
await loadLimits();
beforeEach(() => whole.removeAll());

const made = '2026-11-25T12:00:00.000Z';
const time = (n) => `2026-11-20T10:00:${String(n % 60).padStart(2, '0')}.000Z`;
const card = sampleCard('tessaly-corda-570');

/** What must be found nowhere: each is spelt nowhere else. */
let secrets = [];
const secret = (what) => {
  secrets.push(`Zq${secrets.length}-${what}`);
  return secrets.at(-1);
};

/** What must stay. */
const kept = ['Xw-called', 'Xw-note', 'Xw-figure', 'Xw-seller-of-no-one'];

let ids = 0;
const fact = (book, kind, more) => ({
  book,
  of: book === 'bike' ? 'twin' : 'j',
  id: `f${++ids}`,
  kind,
  time: time(ids),
  day: '2026-11-20',
  seq: ids,
  ...more,
});

const picture = (job, id, text) => {
  const blob = new Blob([text], { type: 'image/jpeg' });
  return { job, id, what: 'other', blob, bytes: blob.size };
};

/** A phone on which something is told of everything that the core calls personal. */
async function fill() {
  secrets = [];
  const facts = [];
  const beside = [];
  const photos = [];
  for (const { book, kind, what } of limits.personal) {
    const word = `${book}-${kind}-${what ?? ''}`;
    const one = fact(book, kind, {
      what: what ?? 'other',
      value: secret(`${word}-value`),
      text: secret(`${word}-text`),
      signs: { [what ?? 'sign']: secret(`${word}-sign`) },
    });
    const undone = fact(book, kind, { what: what ?? 'other', value: secret(`${word}-undone`) });
    const undo = fact(book, 'undo', { what: undone.id });
    const other = { ...one, value: secret(`${word}-beside`) };
    facts.push(one, undone, undo);
    beside.push({
      job: JSON.stringify([book, one.of]),
      kind: 'fact',
      id: one.id,
      text: JSON.stringify(other),
    });
    photos.push(picture(one.of, one.id, secret(`${word}-picture`)));
    photos.push(picture(one.of, `${one.id}~0123`, secret(`${word}-other-picture`)));
  }
  facts.push(fact('bike', 'told', { what: 'called', value: 'Xw-called' }));
  facts.push(fact('bike', 'figure', { what: 'grade.engine', value: 'Xw-figure' }));
  const bill = (id, customer) => ({
    job: 'j',
    id,
    time: time(1),
    kind: 'bill',
    what: 'bill',
    text: JSON.stringify({ seller: 'Xw-seller-of-no-one', ...(customer && { customer }) }),
  });
  const events = [
    { job: 'j', id: 'e1', time: time(1), kind: 'note', text: 'Xw-note' },
    bill('named', secret('customer')),
    { job: 'j', id: 'e2', time: time(2), kind: 'undo', of: 'named' },
    bill('nameless'),
  ];
  const bundle = { job: 'k', events: [{ ...bill('named', secret('bundled')), job: undefined }] };
  const job = (id) => ({
    id,
    name: 'Tessaly Corda 570',
    started: time(0),
    card,
    bench: {},
    bike: 'twin',
    summary: {},
  });
  beside.push({
    job: 'j',
    kind: 'event',
    id: 'nameless',
    text: JSON.stringify(bill('nameless', secret('other-customer'))),
  });
  const aside = [
    {
      key: 'fact 1',
      kind: 'fact',
      text: JSON.stringify({ fact: { value: 7, text: secret('aside') } }),
      why: [],
      from: made,
      time: made,
    },
  ];
  photos.push(picture('nobody', 'x', secret('picture-of-none')));
  photos.push(picture('j', 'e1', 'Xw-photo'));
  await whole.putAll({
    jobs: [job('j'), job('k')],
    events,
    bundles: [bundle],
    facts,
    beside,
    aside,
    photos,
  });
  await store.saveSetting('due', [{ id: 'twin', name: secret('due'), remind: '2027-01-01' }]);
  await freshBikes();
}

/** All bytes of a backup, and of the pictures in it. */
async function bytesOf(how) {
  const file = await makeBackup({ made, photos: true, ...how });
  const bytes = Buffer.from(await file.arrayBuffer());
  const text = how.plain ? bytes.toString() : gunzipSync(bytes).toString();
  const data = [...text.matchAll(/"data":"([^"]*)"/g)].map(([, base64]) =>
    Buffer.from(base64, 'base64').toString(),
  );
  return { file, text: text + data.join('\n') };
}

/** All that lies in the store, as a text. */
async function everything() {
  const parts = [];
  for (const name of await use(async (db) => [...db.objectStoreNames]))
    for (const record of await use((db) => db.getAll(name)))
      parts.push(JSON.stringify(record), record?.blob ? await record.blob.text() : '');
  return parts.join('\n');
}

const foundIn = (text) => secrets.filter((each) => text.includes(each));

test('the core names what tells of persons', () => {
  assert.ok(limits.personal.some(({ book, what }) => book === 'bike' && what === 'owner'));
  assert.ok(limits.personal.some(({ book }) => book === 'visit'));
  assert.ok(personal({ book: 'bike', kind: 'told', what: 'owner' }));
  assert.equal(personal({ book: 'bike', kind: 'told', what: 'called' }), false);
});

for (const plain of [false, true])
  test(`a ${plain ? 'plain' : 'gzipped'} file without persons holds not one of them, and all else`, async () => {
    await fill();
    assert.deepEqual(foundIn((await bytesOf({ plain })).text), secrets, 'all lie here');
    const { text } = await bytesOf({ plain, persons: false });
    assert.deepEqual(foundIn(text), []);
    for (const each of [...kept, 'Xw-photo']) assert.ok(text.includes(each), each);
  });

for (const persons of [false, true])
  test(`one bike goes to another phone with its record, ${persons ? 'and with' : 'but without'} persons`, async () => {
    await fill();
    await whole.putAll({
      jobs: [{ id: 'other', name: 'x', started: time(0), card, bench: {}, summary: {} }],
      facts: [fact('bike', 'told', { of: 'other-bike', what: 'called', value: 'Xw-other-bike' })],
    });
    const file = await bikeFile('twin', { persons, plain: true });
    const text = await file.text();
    assert.equal(
      foundIn(text).some((each) => /owner/.test(each)),
      persons,
    );
    if (!persons) assert.deepEqual(foundIn(text), []);
    assert.equal(text.includes('Xw-other-bike'), false);
    await whole.removeAll();
    await restore(await readBackup(file));
    assert.deepEqual((await store.log()).map(({ id, bike }) => [id, bike]).sort(), [
      ['j', 'twin'],
      ['k', 'twin'],
    ]);
    assert.equal((await bikeRow('twin')).called, 'Xw-called');
    assert.equal(Boolean((await bikeRow('twin')).owner), persons);
    assert.equal(
      (await eventsOf('j')).some(({ text: said }) => said === 'Xw-note'),
      true,
    );
  });

test('what is restored from it is whole, and says nothing of them', async () => {
  await fill();
  const { file } = await bytesOf({ persons: false });
  await whole.removeAll();
  const review = await readBackup(file);
  assert.equal(review.tally.unreadCount, 0);
  await restore(review);
  const all = await everything();
  assert.deepEqual(foundIn(all), []);
  for (const each of kept) assert.ok(all.includes(each), each);
  assert.equal((await bikeRow('twin')).called, 'Xw-called');
  const { owner, plate, photos } = await bikeRow('twin');
  assert.deepEqual([owner, plate, photos], [undefined, undefined, undefined]);
});

test('one act takes away all of them, wherever they lie, and nothing else', async () => {
  await fill();
  assert.equal(await anyPersons(), true);
  await use((db) =>
    Promise.all(
      [
        ['bike/twin owner', secret('draft')],
        ['job/j/bill bill', secret('bill-draft')],
        ['job/j/ note-identify', 'Xw-typed'],
      ].map(([key, value]) => db.put('drafts', { key, value, time: made })),
    ),
  );
  const found = await personsHere();
  assert.equal(found.facts.length, 2 * limits.personal.length);
  assert.equal(found.papers, 2);
  await store.saveSetting('theme', 'dark');
  const before = (await factsOf('bike')).length;

  // What is asked after the act waits for the page to load again: it is looked at before that.
  const erased = erasePersons(found);
  await erased;
  const raw = await rawStore();
  assert.deepEqual(foundIn(raw.text), []);
  for (const each of [...kept, 'Xw-photo', 'Xw-typed', 'dark'])
    assert.ok(raw.text.includes(each), each);
  assert.ok(raw.bikes.find(({ id }) => id === 'twin').called, 'its line is made anew');
  assert.ok(raw.facts.length < before);
  assert.deepEqual(
    raw.events.map(({ id }) => id).sort(),
    ['e1', 'nameless'],
    'what was about the bill went with it',
  );
});

/** The store as it lies, past the page's own way to it. */
async function rawStore() {
  const { openDB } = await import('idb');
  const db = await openDB('tidysump');
  const all = {};
  const texts = [];
  for (const name of db.objectStoreNames) {
    all[name] = await db.getAll(name);
    for (const record of all[name])
      texts.push(JSON.stringify(record), record?.blob ? await record.blob.text() : '');
  }
  db.close();
  return { ...all, text: texts.join('\n') };
}
