import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { openDB } from 'idb';
import * as photos from './photos.js';
import { addEvent, putJob } from './write-job.js';
import { allCards } from './all-cards.js';
import { eventsOf } from './job-events.js';
import * as store from './store.js';

// As the first version of the store left it; opened here before any other test.
await new Promise((resolve, reject) => {
  const opening = indexedDB.open('tidysump', 1);
  opening.onerror = () => reject(opening.error);
  opening.onupgradeneeded = () => {
    const db = opening.result;
    db.createObjectStore('jobs', { keyPath: 'id' }).put({ id: 'kept', started: '2026-01-01' });
    db.createObjectStore('events', { keyPath: ['job', 'id'] }).put({ job: 'kept', id: '1' });
    db.createObjectStore('settings').put('us', 'system');
  };
  opening.onsuccess = () => (opening.result.close(), resolve());
});

test('a store of version 1 opens with all that it held, and takes cards', async () => {
  assert.deepEqual(await store.job('kept'), { id: 'kept', started: '2026-01-01' });
  assert.deepEqual(await eventsOf('kept'), [{ id: '1' }]);
  assert.equal(await store.setting('system'), 'us');
  assert.deepEqual(await allCards(), []);
});

const card = (key) => ({
  key,
  card: { id: 'one', make: 'Plainford' },
  text: '{"id":"one","make":"Plainford"}',
  bike: { id: 'one', name: 'Plainford' },
  changed: '2026-11-25T10:00:00.000Z',
  pinned: false,
});

test('two cards of one id are kept apart by their keys, and go one by one', async () => {
  await store.putCards([card('a'), card('b')]);
  await store.putCard({ ...card('b'), pinned: true });
  assert.deepEqual(await store.card('a'), card('a'));
  const { card: _, text: __, ...line } = card('b');
  assert.deepEqual((await store.lines())[1], { ...line, pinned: true });
  await store.deleteCard('a');
  assert.deepEqual(await allCards(), [{ ...card('b'), pinned: true }]);
  assert.deepEqual(
    (await store.lines()).map(({ key }) => key),
    ['b'],
  );
});

test('cards of any number are all read, each once', async () => {
  const keys = Array.from({ length: 1000 }, (_, n) => `many-${n}`).sort();
  await store.putCards(keys.map(card));
  const read = (await allCards()).map(({ key }) => key).filter((key) => /^many/.test(key));
  assert.deepEqual(read, keys);
});

test('of cards that cannot all be kept none is', async () => {
  await assert.rejects(store.putCards([card('c'), { ...card('d'), card: () => {} }]));
  assert.equal(await store.card('c'), undefined);
});

const job = (id, started = '2026-11-25T10:00:00.000Z') => ({ id, started, summary: {} });

/** Makes the first `times` calls of a method fail with an error of that name. */
function failing(t, method, name, times) {
  const real = IDBDatabase.prototype[method];
  let calls = 0;
  t.mock.method(IDBDatabase.prototype, method, function (...values) {
    if (++calls <= times) throw new DOMException('planted', name);
    return real.apply(this, values);
  });
  return () => calls;
}

test('jobs come the newest first, events with their job only', async () => {
  await putJob(job('old', '2026-11-01T00:00:00.000Z'));
  await putJob(job('new', '2026-11-02T00:00:00.000Z'));
  await addEvent(job('old', '2026-11-01T00:00:00.000Z'), { id: '1', kind: 'done' });
  await addEvent(job('new', '2026-11-02T00:00:00.000Z'), { id: '1', kind: 'note' });
  const ids = (await store.log()).map(({ id }) => id);
  assert.deepEqual(ids, ['new', 'old', 'kept']);
  assert.deepEqual(await eventsOf('old'), [{ id: '1', kind: 'done' }]);
  assert.equal(await store.job('none'), undefined);
});

test('an event is written once: the same id again is refused, and the job stays', async () => {
  await addEvent({ ...job('once'), name: 'before' }, { id: '1', kind: 'done' });
  await assert.rejects(addEvent({ ...job('once'), name: 'after' }, { id: '1', kind: 'note' }));
  assert.deepEqual(await eventsOf('once'), [{ id: '1', kind: 'done' }]);
  assert.equal((await store.job('once')).name, 'before');
});

test('what cannot be stored in full is not stored in part', async () => {
  const unstorable = { ...job('half'), card: () => {} };
  await assert.rejects(addEvent(unstorable, { id: '1', kind: 'done' }), {
    name: 'DataCloneError',
  });
  assert.deepEqual(await eventsOf('half'), []);
});

for (const name of ['InvalidStateError', 'UnknownError']) {
  test(`a connection that was closed unseen (${name}) is opened anew, once`, async (t) => {
    const calls = failing(t, 'transaction', name, 1);
    await store.saveSetting('system', name);
    assert.equal(calls(), 2);
    assert.equal(await store.setting('system'), name);
  });

  test(`a second ${name} is told`, async (t) => {
    const calls = failing(t, 'transaction', name, 2);
    await assert.rejects(store.saveSetting('system', 'us'), { name });
    assert.equal(calls(), 2);
  });
}

test('any other failure is told at once', async (t) => {
  const calls = failing(t, 'transaction', 'QuotaExceededError', 9);
  await assert.rejects(store.saveSetting('system', 'us'), { name: 'QuotaExceededError' });
  assert.equal(calls(), 1);
});

/** The module as a page that was just loaded has it, and what it told of the store, in order. */
async function justLoaded(t, name) {
  t.mock.timers.reset();
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const database = await import(`./database.js?${name}`);
  const told = [];
  database.standing.see = () => told.push(database.standing.word);
  return { ...database, told };
}

/** Makes the store answer whoever opens it when that is said, or never. */
function holdBack(t) {
  const { open } = indexedDB;
  let say;
  const said = new Promise((resolve) => (say = resolve));
  const { mock } = t.mock.method(indexedDB, 'open', (...values) => {
    const request = open.apply(indexedDB, values);
    const { dispatchEvent } = request;
    request.dispatchEvent = (event) => void said.then(() => dispatchEvent.call(request, event));
    return request;
  });
  return { say, calls: () => mock.callCount() };
}

const theme = (value) => (tx) => tx.objectStore('settings').put(value, 'theme');

test('a store that is slow is waited for, with a sign that goes when it answers', async (t) => {
  const { write, told, standing } = await justLoaded(t, 'slow');
  const { say, calls } = holdBack(t);
  const kept = [write(['settings'], theme('dark')), write(['settings'], theme('light'))];
  t.mock.timers.tick(1900);
  assert.deepEqual(told, [], 'not at once');
  t.mock.timers.tick(5100);
  assert.deepEqual(told, ['store.slow']);
  say();
  await Promise.all(kept);
  assert.deepEqual(told, ['store.slow', '']);
  assert.deepEqual([calls(), standing.writes], [1, 2]);
  assert.equal(await store.setting('theme'), 'light');
});

test('a store that never answers is never said to be none, and what needs none does not wait', async (t) => {
  const { use, ifSoon, told } = await justLoaded(t, 'never');
  holdBack(t);
  let ended = false;
  const asked = use(() => {}).finally(() => (ended = true));
  const soon = ifSoon(asked);
  t.mock.timers.tick(3_600_000);
  assert.equal(await soon, undefined);
  const next = ifSoon(asked);
  t.mock.timers.tick(1);
  assert.equal(await next, undefined, 'then at once');
  assert.deepEqual([told, ended], [['store.slow'], false]);
});

test('a read that is slow is told too, and each of several is waited for', async (t) => {
  const { use, told } = await justLoaded(t, 'slow-read');
  const ends = [];
  const reads = [0, 1].map(() => use(() => new Promise((resolve) => ends.push(resolve))));
  await use(() => {});
  t.mock.timers.tick(2000);
  ends[0]();
  await reads[0];
  assert.deepEqual(told, ['store.slow']);
  ends[1]();
  await reads[1];
  assert.deepEqual(told, ['store.slow', '']);
});

test('that this browser keeps no records is said when it refuses, and until it does not', async (t) => {
  const { use, told } = await justLoaded(t, 'refused');
  const { mock } = t.mock.method(indexedDB, 'open', () => {
    throw new DOMException('planted', 'SecurityError');
  });
  await assert.rejects(
    use(() => {}),
    { name: 'SecurityError' },
  );
  await assert.rejects(use(() => {}));
  assert.deepEqual(told, ['store.failed']);
  mock.restore();
  await use(() => {});
  assert.deepEqual(told, ['store.failed', '']);
});

test('a store that can’t be opened just now is tried again for a while, and then told', async (t) => {
  const { use, told } = await justLoaded(t, 'unknown');
  let works = false;
  const { open } = indexedDB;
  const { mock } = t.mock.method(indexedDB, 'open', (...values) => {
    if (works) return open.apply(indexedDB, values);
    throw new DOMException('planted', 'AbortError');
  });
  const pass = async (ms) => {
    for (let n = 0; n < ms; n += 100) {
      await new Promise(setImmediate);
      t.mock.timers.tick(100);
    }
  };
  const first = use((db) => db.version);
  await pass(1000);
  works = true;
  await pass(2000);
  assert.equal(await first, 5);
  assert.ok(mock.callCount() > 2 && mock.callCount() < 10, `${mock.callCount()}`);

  const { use: other, told: heard } = await justLoaded(t, 'unknown-for-ever');
  works = false;
  const refused = assert.rejects(
    other(() => {}),
    { name: 'AbortError' },
  );
  await pass(10_000);
  await refused;
  assert.deepEqual([told, heard], [[], ['store.slow', 'store.error']]);
});

/** All that lies in a database, by its stores. */
async function dump(name) {
  const db = await openDB(name);
  const all = {};
  for (const of of db.objectStoreNames) all[of] = await db.getAll(of);
  const { version } = db;
  db.close();
  return { version, ...all };
}

test('what a newer version of the app wrote stays untouched, and is told as what it is', async (t) => {
  const real = indexedDB;
  t.after(() => (globalThis.indexedDB = real));
  globalThis.indexedDB = new IDBFactory();
  const newer = await openDB('tidysump', 6, {
    upgrade(db) {
      db.createObjectStore('jobs', { keyPath: 'name' }).put({ name: 'of another kind' });
      db.createObjectStore('moons', { autoIncrement: true }).put('new');
    },
  });
  newer.close();
  const before = await dump('tidysump');
  const { use, write, told } = await justLoaded(t, 'newer');
  await assert.rejects(
    use((db) => db.getAll('jobs')),
    { name: 'VersionError' },
  );
  await assert.rejects(write(['settings'], theme('dark')), { name: 'VersionError' });
  assert.deepEqual(told, ['store.newer']);
  assert.deepEqual(await dump('tidysump'), before);
  assert.equal(before.version, 6);
});

const jpeg = new Blob([Uint8Array.of(255, 216, 255)], { type: 'image/jpeg' });
const picture = { what: 'plug', blob: jpeg, bytes: 3 };

test('a picture is kept with its event, or neither is', async (t) => {
  await addEvent(job('shot'), { id: '1', kind: 'photo', what: 'plug' }, picture);
  const [{ blob, ...rest }] = await photos.photosOf('shot');
  assert.deepEqual(rest, { job: 'shot', id: '1', what: 'plug', bytes: 3 });
  assert.deepEqual([...new Uint8Array(await blob.arrayBuffer())], [255, 216, 255]);

  const { add } = IDBObjectStore.prototype;
  t.mock.method(IDBObjectStore.prototype, 'add', function (...values) {
    if (this.name === 'photos') throw new DOMException('planted', 'QuotaExceededError');
    return add.apply(this, values);
  });
  await assert.rejects(addEvent(job('shot'), { id: '2', kind: 'photo' }, picture), {
    name: 'QuotaExceededError',
  });
  assert.deepEqual((await eventsOf('shot')).length, 1);
  assert.equal((await photos.photosOf('shot')).length, 1, 'what was there is there');
});

test('a picture is deleted, its event stays; those of other jobs stay', async () => {
  await addEvent(job('shot2'), { id: '1', kind: 'photo' }, picture);
  await addEvent(job('shot2'), { id: '2', kind: 'photo' }, picture);
  await photos.deletePhoto('shot2', '1');
  assert.deepEqual(
    (await photos.photosOf('shot2')).map(({ id }) => id),
    ['2'],
  );
  assert.equal((await eventsOf('shot2')).length, 2);
  await photos.deletePhotosOf('shot2');
  assert.deepEqual(await photos.photosOf('shot2'), []);
  assert.equal((await photos.photosOf('shot')).length, 1);
});
