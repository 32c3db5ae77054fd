import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { test } from 'node:test';
import * as photos from './photos.js';
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
  assert.deepEqual(await store.events('kept'), [{ id: '1' }]);
  assert.equal(await store.setting('system'), 'us');
  assert.deepEqual(await store.cards(), []);
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
  assert.deepEqual(await store.cards(), [{ ...card('b'), pinned: true }]);
  assert.deepEqual(
    (await store.lines()).map(({ key }) => key),
    ['b'],
  );
});

test('cards of any number are all read, each once', async () => {
  const keys = Array.from({ length: 1000 }, (_, n) => `many-${n}`).sort();
  await store.putCards(keys.map(card));
  const read = (await store.cards()).map(({ key }) => key).filter((key) => /^many/.test(key));
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
  await store.putJob(job('old', '2026-11-01T00:00:00.000Z'));
  await store.putJob(job('new', '2026-11-02T00:00:00.000Z'));
  await store.addEvent(job('old', '2026-11-01T00:00:00.000Z'), { id: '1', kind: 'done' });
  await store.addEvent(job('new', '2026-11-02T00:00:00.000Z'), { id: '1', kind: 'note' });
  const ids = (await store.log()).map(({ id }) => id);
  assert.deepEqual(ids, ['new', 'old', 'kept']);
  assert.deepEqual(await store.events('old'), [{ id: '1', kind: 'done' }]);
  assert.equal(await store.job('none'), undefined);
});

test('an event is written once: the same id again is refused, and the job stays', async () => {
  await store.addEvent({ ...job('once'), name: 'before' }, { id: '1', kind: 'done' });
  await assert.rejects(
    store.addEvent({ ...job('once'), name: 'after' }, { id: '1', kind: 'note' }),
  );
  assert.deepEqual(await store.events('once'), [{ id: '1', kind: 'done' }]);
  assert.equal((await store.job('once')).name, 'before');
});

test('what cannot be stored in full is not stored in part', async () => {
  const unstorable = { ...job('half'), card: () => {} };
  await assert.rejects(store.addEvent(unstorable, { id: '1', kind: 'done' }), {
    name: 'DataCloneError',
  });
  assert.deepEqual(await store.events('half'), []);
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

const noAnswer = { message: 'the store does not answer' };

test('a store that never answers is given up, and asked anew by the next call', async (t) => {
  const fresh = await import('./database.js?never-answers');
  const put = (tx) => tx.objectStore('settings').put('light', 'theme');
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const { mock } = t.mock.method(indexedDB, 'open', () => new IDBOpenDBRequest());
  const given = assert.rejects(fresh.write(['settings'], put), noAnswer);
  t.mock.timers.tick(5000);
  await given;
  assert.equal(mock.callCount(), 1);
  mock.restore();
  await fresh.write(['settings'], put);
  assert.equal(await store.setting('theme'), 'light');
});

test('a change that was given up does not come later', async (t) => {
  const fresh = await import('./database.js?answers-late');
  const put = (tx) => tx.objectStore('settings').put(true, 'late');
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const given = assert.rejects(fresh.write(['settings'], put), noAnswer);
  t.mock.timers.tick(5000); // before the store had a chance to open
  await given;
  assert.equal(await store.setting('late'), undefined);
});

const jpeg = new Blob([Uint8Array.of(255, 216, 255)], { type: 'image/jpeg' });
const picture = { what: 'plug', blob: jpeg, bytes: 3 };

test('a picture is kept with its event, or neither is', async (t) => {
  await store.addEvent(job('shot'), { id: '1', kind: 'photo', what: 'plug' }, picture);
  const [{ blob, ...rest }] = await photos.photosOf('shot');
  assert.deepEqual(rest, { job: 'shot', id: '1', what: 'plug', bytes: 3 });
  assert.deepEqual([...new Uint8Array(await blob.arrayBuffer())], [255, 216, 255]);

  const { add } = IDBObjectStore.prototype;
  t.mock.method(IDBObjectStore.prototype, 'add', function (...values) {
    if (this.name === 'photos') throw new DOMException('planted', 'QuotaExceededError');
    return add.apply(this, values);
  });
  await assert.rejects(store.addEvent(job('shot'), { id: '2', kind: 'photo' }, picture), {
    name: 'QuotaExceededError',
  });
  assert.deepEqual((await store.events('shot')).length, 1);
  assert.equal((await photos.photosOf('shot')).length, 1, 'what was there is there');
});

test('a picture is deleted, its event stays; those of other jobs stay', async () => {
  await store.addEvent(job('shot2'), { id: '1', kind: 'photo' }, picture);
  await store.addEvent(job('shot2'), { id: '2', kind: 'photo' }, picture);
  await photos.deletePhoto('shot2', '1');
  assert.deepEqual(
    (await photos.photosOf('shot2')).map(({ id }) => id),
    ['2'],
  );
  assert.equal((await store.events('shot2')).length, 2);
  await photos.deletePhotosOf('shot2');
  assert.deepEqual(await photos.photosOf('shot2'), []);
  assert.equal((await photos.photosOf('shot')).length, 1);
});
