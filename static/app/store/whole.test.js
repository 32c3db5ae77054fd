// What came in from elsewhere lies beside what was written here, and is read with it.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { addEvent } from './write-job.js';
import { besideOf, eventsOf } from './job-events.js';
import * as store from './store.js';
import * as whole from './whole.js';

const started = '2026-11-25T10:00:00.000Z';
const job = (id) => ({ id, name: id, started, card: { id: 'one' }, bench: {} });
const note = (id, text = id) => ({ id, kind: 'note', text });

test('the events of a job are those that came in as a whole and those added since', async () => {
  await whole.putAll({
    jobs: [job('a'), job('b')],
    bundles: [
      { job: 'a', events: [note('1'), note('2')] },
      { job: 'b', events: [note('1')] },
    ],
    events: [{ ...note('9'), job: 'a' }],
  });
  await addEvent(job('a'), note('3'));
  assert.deepEqual(
    await eventsOf('a'),
    ['1', '2', '3', '9'].map((id) => note(id)),
  );
  const together = await whole.eventsOf(['b', 'none', 'a']);
  assert.deepEqual(together[0], [{ ...note('1'), job: 'b' }]);
  assert.deepEqual(together[1], []);
  assert.deepEqual(
    together[2].map(({ job: of, id }) => of + id),
    ['a1', 'a2', 'a3', 'a9'],
  );
  assert.deepEqual([...(await whole.jobsHere())].sort(), ['a', 'b']);
});

test('one id is one event, whatever lists it stands in', async () => {
  await whole.putAll({
    jobs: [job('twice')],
    bundles: [{ job: 'twice', events: [note('1', 'in the bundle'), note('2')] }],
    events: [{ ...note('1', 'by itself'), job: 'twice' }],
  });
  assert.deepEqual(await eventsOf('twice'), [note('1', 'by itself'), note('2')]);
});

test('ids of any letters belong to their own job', async () => {
  const ids = ['', '\uffff', '\uffff\uffff', 'constructor', '1', '😀'];
  for (const id of ids)
    await whole.putAll({ events: ids.map((n) => ({ ...note(n), job: `odd${id}` })) });
  for (const id of ids) {
    const here = await eventsOf(`odd${id}`);
    assert.deepEqual(here.map((event) => event.id).sort(), ids.toSorted(), JSON.stringify(id));
  }
});

test('another content stays beside, once, and with its job', async () => {
  const other = (of, id, text) => ({ job: of, kind: id ? 'event' : 'job', id, text });
  const beside = [
    other('a', '1', '{"id":"1"}'),
    other('a', '1', '{}'),
    other('a', '', '{"id":"a"}'),
    other('aa', '1', '{}'),
  ];
  await whole.putAll({ beside });
  await whole.putAll({ beside });
  const texts = (list) => list.map(({ kind, text }) => kind + text);
  const ofA = ['event{"id":"1"}', 'event{}', 'job{"id":"a"}'];
  assert.deepEqual(texts(await besideOf('a')), ofA);
  const [one, none, two] = await whole.besideOf(['aa', 'none', 'a']);
  assert.deepEqual([texts(one), none, texts(two)], [['event{}'], [], ofA]);
});

test('what lies aside is there until it is dropped', async () => {
  const aside = ['x', 'y'].map((text) => ({
    key: `event ${text}`,
    kind: 'event',
    text,
    why: [{ code: 'not-json', where: '/', grade: 'refuse' }],
    from: started,
    time: started,
  }));
  await whole.putAll({ aside });
  assert.deepEqual(await whole.aside(), aside);
  await whole.dropAside(['event x', 'event z']);
  assert.deepEqual(await whole.aside(), [aside[1]]);
});

test('what was handed out is known by its number of events', async () => {
  await whole.putSaved([
    { id: 'a', events: 3, made: started },
    { id: 'b', events: 1, made: started },
  ]);
  await whole.putSaved([{ id: 'a', events: 4, made: started }]);
  assert.deepEqual(
    [...(await whole.saved())],
    [
      ['a', 4],
      ['b', 1],
    ],
  );
});

test('what lists show of jobs and cards is written with them, or nothing is', async () => {
  const card = { key: 'k', card: { id: 'one' }, text: '{}', bike: { id: 'one' }, changed: started };
  await whole.putAll({ jobs: [job('listed')], cards: [card] });
  assert.ok((await store.log()).some(({ id }) => id === 'listed'));
  assert.deepEqual(await store.lines(), [{ key: 'k', bike: { id: 'one' }, changed: started }]);
  await assert.rejects(
    whole.putAll({ jobs: [job('half')], bundles: [{ job: 'half', events: [() => {}] }] }),
  );
  assert.equal(await store.job('half'), undefined);
});
