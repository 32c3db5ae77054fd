// What is typed comes back, whenever the page ends.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { lost, use, write } from './database.js';
import {
  Drafts,
  draftsWritten,
  flush,
  inScopes,
  jobScope,
  keeping,
  sweepDrafts,
  watchDrafts,
} from './drafts.js';
import { addEvent, putJob } from './write-job.js';

let loads = 0;
/** The module as a page that is loaded anew has it: it remembers nothing. */
const anew = () => import(`./drafts.js?load=${++loads}`);
/** What the next page finds in a scope. */
const found = async (scope) => (await (await anew()).Drafts.open(scope)).all();

test('what is typed is there for the next page, in its own scope only', async () => {
  const note = await Drafts.open(jobScope('a'));
  note.put('note', 'Dark, no glitter');
  note.put('ask odometer', '12 400');
  (await Drafts.open(jobScope('a', 'bill'))).put('estimate', { lines: [{ count: '2' }] });
  (await Drafts.open(jobScope('a b'))).put('note', 'another');
  assert.ok(!draftsWritten());
  await flush();
  assert.ok(draftsWritten());
  assert.deepEqual(await found(jobScope('a')), [
    ['ask odometer', '12 400'],
    ['note', 'Dark, no glitter'],
  ]);
  assert.deepEqual(await found(jobScope('a', 'bill')), [['estimate', { lines: [{ count: '2' }] }]]);
  assert.deepEqual(await found(jobScope('a b')), [['note', 'another']]);
  assert.deepEqual(await found(jobScope('b')), []);
});

test('one field is found in every scope that begins so, written or not', async () => {
  const first = await Drafts.open('pages a b');
  first.put('state', { count: 1 });
  first.put('text 0', 'long');
  (await Drafts.open('pages c')).put('state', { count: 2 });
  (await Drafts.open('paged')).put('state', { count: 3 });
  await flush();
  const other = await anew();
  const all = [
    ['pages a b', { count: 1 }],
    ['pages c', { count: 2 }],
  ];
  assert.deepEqual(await other.inScopes('pages ', 'state'), all);
  (await other.Drafts.open('pages a b')).drop('state');
  (await other.Drafts.open('pages d')).put('state', { count: 4 });
  assert.deepEqual(await other.inScopes('pages ', 'state'), [
    ['pages c', { count: 2 }],
    ['pages d', { count: 4 }],
  ]);
  assert.deepEqual(await inScopes('pages ', 'none'), []);
});

test('it is written within a second, without being asked, and said then', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const drafts = await Drafts.open('card x');
  const written = new Promise((resolve) => {
    const end = watchDrafts(() => draftsWritten() && (end(), resolve()));
  });
  drafts.put('name', 'Her');
  t.mock.timers.tick(300);
  drafts.put('name', 'Heron');
  t.mock.timers.tick(700);
  t.mock.timers.reset();
  await written;
  assert.deepEqual(await found('card x'), [['name', 'Heron']]);
});

test('it is written when the page is left', async () => {
  const handlers = {};
  globalThis.addEventListener = (name, fn) => (handlers[name] = fn);
  globalThis.document = { addEventListener: (name, fn) => (handlers[name] = fn) };
  const page = await anew();
  delete globalThis.addEventListener;
  delete globalThis.document;
  for (const name of ['pagehide', 'visibilitychange']) {
    (await page.Drafts.open('leave')).put('field', name);
    handlers[name]();
    assert.deepEqual(await found('leave'), [['field', name]], 'nothing was waited for');
  }
});

test('what was dropped does not come back', async () => {
  const drafts = await Drafts.open('dropped');
  drafts.put('field', 'text');
  await flush();
  drafts.drop('field');
  assert.equal(drafts.get('field'), undefined);
  await flush();
  assert.deepEqual(await found('dropped'), []);
});

test('a store that is full is tried again with what is typed next', async (t) => {
  const drafts = await Drafts.open('full');
  const { mock } = t.mock.method(IDBObjectStore.prototype, 'put', () => {
    throw new DOMException('planted', 'QuotaExceededError');
  });
  drafts.put('one', '1');
  await assert.rejects(flush(), { name: 'QuotaExceededError' });
  assert.ok(!draftsWritten(), 'it does not say so');
  mock.restore();
  drafts.put('two', '2');
  await flush();
  assert.deepEqual(await found('full'), [
    ['one', '1'],
    ['two', '2'],
  ]);
});

test('what the browser takes away from under the page is written down again', async () => {
  const drafts = await Drafts.open('taken');
  drafts.put('field', 'typed');
  await flush();
  await write(['drafts'], (tx) => tx.objectStore('drafts').clear());
  for (const see of lost) see();
  assert.ok(!draftsWritten());
  await flush();
  assert.deepEqual(await found('taken'), [['field', 'typed']]);
});

test('a value that is changed in place is written as it was when it was put', async () => {
  const drafts = await Drafts.open('in place');
  const paper = { lines: ['a'] };
  drafts.put('paper', paper);
  paper.lines.push('b');
  await flush();
  assert.deepEqual(await found('in place'), [['paper', { lines: ['a'] }]]);
});

const job = (id) => ({ id, name: id, started: '2026-11-25T10:00:00.000Z', card: {}, bench: {} });

test('a draft goes with the event that keeps it, in one write, or neither happens', async (t) => {
  const drafts = await Drafts.open(jobScope('one'));
  const keys = [drafts.key('note')];
  drafts.put('note', 'kept');
  const add = (id) => keeping(keys, () => addEvent(job('one'), { id }, undefined, keys));
  const { add: really } = IDBObjectStore.prototype;
  const { mock } = t.mock.method(IDBObjectStore.prototype, 'add', () => {
    throw new DOMException('planted', 'QuotaExceededError');
  });
  await assert.rejects(add('1'));
  mock.restore();
  assert.equal(IDBObjectStore.prototype.add, really);
  await flush();
  assert.deepEqual(await found(jobScope('one')), [['note', 'kept']]);
  await add('1');
  assert.deepEqual(await found(jobScope('one')), []);
  assert.equal(drafts.get('note'), undefined);
  await flush();
  assert.deepEqual(await found(jobScope('one')), []);
});

test('what is typed while an event is kept stays', async () => {
  const drafts = await Drafts.open(jobScope('meanwhile'));
  const keys = [drafts.key('note')];
  drafts.put('note', 'first');
  await keeping(keys, async () => {
    drafts.put('note', 'second');
    await addEvent(job('meanwhile'), { id: '1' }, undefined, keys);
  });
  await flush();
  assert.equal(drafts.get('note'), 'second');
  assert.deepEqual(await found(jobScope('meanwhile')), [['note', 'second']]);
});

test('drafts of jobs that are gone are swept, all others stay', async () => {
  const page = await anew();
  for (const id of ['here', 'gone', 'a/b', '%2F', 'gone too'])
    for (const part of ['', 'bill'])
      (await page.Drafts.open(jobScope(id, part))).put('field', 'text');
  (await page.Drafts.open('card gone')).put('field', 'text');
  await page.flush();
  for (const id of ['here', 'a/b']) await putJob(job(id));
  const { sweepDrafts: sweep } = await anew();
  await sweep();
  const keys = await use((db) => db.getAllKeys('drafts'));
  const left = keys.filter((key) => key.endsWith('field'));
  for (const scope of [jobScope('here'), jobScope('here', 'bill'), jobScope('a/b'), 'card gone'])
    assert.ok(left.includes(`${scope} field`), scope);
  for (const scope of [jobScope('gone'), jobScope('%2F'), jobScope('gone too', 'bill')])
    assert.ok(!left.includes(`${scope} field`), scope);
  (await Drafts.open(jobScope('typed here'))).put('field', 'text');
  await flush();
  assert.deepEqual(await sweepDrafts(), [], 'what this page holds is not gone');
});
