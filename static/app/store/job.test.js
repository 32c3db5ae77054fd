import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { beforeEach, test } from 'node:test';
import { write } from './database.js';
import { Job, keepSteps, startJob, writtenBack } from './job.js';
import { photosOf } from './photos.js';
import { addEvent, putJob } from './write-job.js';
import { besideOf, eventsOf } from './job-events.js';
import * as store from './store.js';
import * as whole from './whole.js';
import { FakeWorker } from '../../test/fake-worker.js';

// A core that counts the events, refuses a reading of "bad", and doubts one of "odd".
const grades = { bad: 'refuse', odd: 'doubt' };

function replay({ events }) {
  const findings = events.flatMap(({ value }, i) =>
    grades[value] ? [{ code: value, where: `/events/${i}/value`, grade: grades[value] }] : [],
  );
  const done = events.filter(({ kind }) => kind === 'done').map(({ step }) => step);
  const summary = { phase: 'open', done: done.length, steps: 2 };
  return { ok: { next: 'b', steps: 2, done, lastID: events.at(-1)?.id, findings, summary } };
}

let answers = {};

function core({ op, input }) {
  const answer = answers[op]?.(JSON.parse(input));
  return { output: JSON.stringify(answer) };
}

globalThis.document = { visibilityState: 'hidden' };
globalThis.Worker = function () {
  return new FakeWorker(core);
};

const card = { make: 'Tessaly', model: 'Corda 570' };
const bench = { system: 'us' };

beforeEach(() => {
  answers = {
    plan: () => ({ ok: { steps: [{ id: 'a' }, { id: 'b' }] } }),
    replay,
    'last-job': () => ({ ok: {} }),
  };
});

/** Starts a job and opens it. */
const begin = async () => Job.open(await startJob(card, bench));

/** The job anew, as after a restart. */
const again = (job) => Job.open(job.record.id);

test('a job keeps card and bench as they were', async () => {
  const job = await begin();
  assert.deepEqual([job.record.card, job.record.bench], [card, bench]);
  assert.equal(job.record.name, 'Tessaly Corda 570');
  assert.deepEqual((await store.log()).at(0).id, job.record.id, 'the newest comes first');
  assert.equal(await Job.open('no-such-job'), undefined);
});

test('an event that is kept is there after a restart, and the list knows', async () => {
  const job = await begin();
  assert.deepEqual(await job.add({ kind: 'done', step: 'a' }), []);
  assert.ok(job.isDone('a') && !job.isDone('b'));
  const later = await again(job);
  assert.deepEqual(later.events, job.events);
  assert.ok(later.isDone('a'));
  const { summary } = later.record;
  assert.deepEqual(summary, { phase: 'open', done: 1, steps: 2 });
  assert.deepEqual((await store.log()).find(({ id }) => id === job.record.id).summary, summary);
});

test('a refused event is not stored and changes nothing', async () => {
  const job = await begin();
  await job.add({ kind: 'done', step: 'a' });
  const { state, events } = job;
  const found = await job.add({ kind: 'reading', step: 'a', value: 'bad' });
  assert.deepEqual(
    found.map(({ code }) => code),
    ['bad'],
  );
  assert.equal(job.state, state);
  assert.deepEqual(job.events, events);
  assert.deepEqual((await again(job)).events, events);
});

test('a doubted event is stored, and its doubt is told once', async () => {
  const job = await begin();
  const found = await job.add({ kind: 'reading', step: 'a', value: 'odd' });
  assert.deepEqual(
    found.map(({ grade }) => grade),
    ['doubt'],
  );
  assert.deepEqual(await job.add({ kind: 'done', step: 'a' }), []);
  assert.equal((await again(job)).events.length, 2);
});

test('what is not in the store yet is not said to be done', async (t) => {
  const job = await begin();
  const { add } = IDBObjectStore.prototype;
  const said = [];
  t.mock.method(IDBObjectStore.prototype, 'add', function (...values) {
    said.push(job.isDone('a'));
    return add.apply(this, values);
  });
  await job.add({ kind: 'done', step: 'a' });
  assert.deepEqual([said, job.isDone('a')], [[false], true]);
});

test('without the core nothing is stored and nothing is lost', async () => {
  const job = await begin();
  await job.add({ kind: 'done', step: 'a' });
  const { state } = job;
  answers.replay = () => ({
    findings: [{ code: 'core-unavailable', where: '/', grade: 'refuse' }],
  });
  const [finding] = await job.add({ kind: 'done', step: 'b' });
  assert.equal(finding.code, 'core-unavailable');
  assert.equal(job.state, state);
  answers.replay = replay;
  assert.equal((await again(job)).events.length, 1);
});

test('a job whose plan is refused opens and says why', async () => {
  answers.plan = () => ({ findings: [{ code: 'not-a-card', where: '/card', grade: 'refuse' }] });
  const job = await begin();
  assert.equal(job.plan, undefined);
  assert.equal(job.findings[0].code, 'not-a-card');
});

test('when the store fails, the state is as before and the event can be added again', async (t) => {
  const job = await begin();
  await job.add({ kind: 'done', step: 'a' });
  const { state, events } = job;
  const { mock } = t.mock.method(IDBObjectStore.prototype, 'add', () => {
    throw new DOMException('planted', 'QuotaExceededError');
  });
  await assert.rejects(job.add({ kind: 'done', step: 'b' }), { name: 'QuotaExceededError' });
  assert.equal(job.state, state);
  assert.deepEqual(job.events, events);
  mock.restore();
  await job.add({ kind: 'done', step: 'b' });
  assert.ok(job.isDone('b'));
});

test('an event has its place in the job, and the time and day as the phone told them', async (t) => {
  t.mock.timers.enable({ apis: ['Date'], now: Date.parse('2031-11-25T10:00:00.000Z') });
  const job = await begin();
  await job.add({ kind: 'done', step: 'a' });
  t.mock.timers.setTime(Date.parse('2026-01-01T12:00:00.000Z'));
  // The store gives events back in the order of their ids, which are random.
  const later = await again(job);
  for (let n = 0; n < 9; n++) await later.add({ kind: 'note', step: 'a', text: `${n}` });
  const told = later.events.map(({ seq, time, day }) => [seq, time, day]);
  const [first, ...others] = told.sort(([one], [other]) => one - other);
  assert.deepEqual(first, [1, '2031-11-25T10:00:00.000Z', '2031-11-25']);
  const now = ['2026-01-01T12:00:00.000Z', '2026-01-01'];
  assert.deepEqual(
    others,
    Array.from({ length: 9 }, (_, n) => [n + 2, ...now]),
  );
});

test('events of earlier versions have their day when the core is asked, and not in the store', async () => {
  const asked = [];
  answers.replay = (input) => (asked.push(input), replay(input));
  const job = await begin();
  const times = ['2026-05-01T12:00:00.000Z', '9999-05-01T12:00:00.000Z', 'soon', 7, undefined];
  for (const [n, time] of times.entries())
    await addEvent(job.record, { id: `old-${n}`, time, kind: 'note' });
  const { events } = await again(job);
  const days = asked.at(-1).events.map(({ day }) => day);
  assert.deepEqual(days, ['2026-05-01', '9999-05-01', undefined, undefined, undefined]);
  assert.ok(events.every((event) => !('day' in event)));
  assert.ok((await eventsOf(job.record.id)).every((event) => !('day' in event)));
});

test('the core is told what the job began with, and what is known beside it', async () => {
  const asked = [];
  answers.plan = (input) => (asked.push(input), { ok: { steps: [{ id: 'a' }, { id: 'b' }] } });
  answers.replay = (input) => (asked.push(input), replay(input));
  const job = await begin();
  const { id, started } = job.record;
  const other = { id: '1', kind: 'note', text: 'other', time: '2026-05-01T12:00:00.000Z' };
  const texts = [JSON.stringify(other), 'null', '7', '{', ''];
  const beside = texts.map((text) => ({ job: id, kind: 'event', id: '1', text }));
  beside.push({ job: id, kind: 'job', id: '', text: '{}' });
  await whole.putAll({ beside });
  asked.length = 0;
  await again(job);
  const [plan, told] = asked;
  assert.deepEqual(plan, { card, bench, steps: ['a', 'b'] });
  const { steps, started: begun } = told;
  assert.deepEqual({ steps, begun }, { steps: ['a', 'b'], begun: started });
  assert.deepEqual(told.beside, [{ ...other, day: '2026-05-01' }]);
});

test('a job keeps the steps that it began with; one of an earlier version keeps those it is met with', async () => {
  const steps = (...ids) => ({ ok: { steps: ids.map((id) => ({ id })) } });
  const job = await begin();
  assert.deepEqual(job.record.steps, ['a', 'b']);
  const old = (id, summary) =>
    putJob({ id, started: '2026-01-01T08:00:00.000Z', name: id, card, bench, summary });
  await old('opened', { phase: 'open' });
  await old('swept', { phase: 'waiting' });
  await old('closed', { phase: 'closed' });
  await Job.open('opened');
  await keepSteps('one');
  answers.plan = () => steps('c');
  await keepSteps('two');
  const kept = async (id) => (await store.job(id)).steps;
  for (const id of [job.record.id, 'opened', 'swept'])
    assert.deepEqual((await Job.open(id), await kept(id)), ['a', 'b'], id);
  assert.equal((await Job.open('closed'), await kept('closed')), undefined);
  await (await Job.open('swept')).add({ kind: 'done', step: 'a' });
  assert.deepEqual(await kept('swept'), ['a', 'b']);
});

test('jobs are looked through once with each version of the app', async (t) => {
  await keepSteps('three');
  const { mock } = t.mock.method(IDBObjectStore.prototype, 'getAll');
  await keepSteps('three');
  assert.equal(mock.callCount(), 0);
  await keepSteps('four');
  assert.equal(mock.callCount(), 2, 'the lines, and what is told of the bikes');
});

test('what is done is not done twice, in however many windows', async () => {
  const one = await begin();
  const other = await again(one);
  await one.add({ kind: 'done', step: 'a' });
  assert.deepEqual(await other.add({ kind: 'done', step: 'a' }), []);
  assert.equal((await again(one)).events.length, 1);
  assert.deepEqual(other.events, one.events);
});

test('what is tapped twice while the store is slow is added once, and later again', async () => {
  const job = await begin();
  const note = { kind: 'note', step: 'a', text: 'tapped' };
  const found = await Promise.all([job.add(note), job.add({ ...note }), job.add({ ...note })]);
  assert.deepEqual(found, [[], [], []]);
  assert.equal((await again(job)).events.length, 1);
  await job.add(note);
  assert.equal((await again(job)).events.length, 2);
});

test('what failed for every tap can be tried again', async (t) => {
  const job = await begin();
  const note = { kind: 'note', step: 'a', text: 'tapped' };
  const { mock } = t.mock.method(IDBObjectStore.prototype, 'add', () => {
    throw new DOMException('planted', 'QuotaExceededError');
  });
  const taps = await Promise.allSettled([job.add(note), job.add(note)]);
  assert.deepEqual(
    taps.map(({ status }) => status),
    ['rejected', 'rejected'],
  );
  mock.restore();
  await job.add(note);
  assert.equal((await again(job)).events.length, 1);
});

test('an undo can be undone, and a disputed event be decided', async () => {
  const job = await begin();
  await job.add({ kind: 'done', step: 'a' });
  job.state.redo = 'the undo';
  await job.redo();
  await job.choose('the event', 'f00d');
  const [undo, choice] = job.events.slice(1).map(({ kind, of, value }) => ({ kind, of, value }));
  assert.deepEqual(undo, { kind: 'undo', of: 'the undo', value: undefined });
  assert.deepEqual(choice, { kind: 'choose', of: 'the event', value: 'f00d' });
});

test('a job that the core refuses opens as it stands, takes notes and photos, and nothing else', async () => {
  const job = await begin();
  await job.add({ kind: 'done', step: 'a' });
  const refusal = { findings: [{ code: 'not-a-card', where: '/card', grade: 'refuse' }] };
  Object.assign(answers, { plan: () => refusal, replay: () => refusal });
  const plain = await again(job);
  assert.ok(plain.plain);
  assert.deepEqual([plain.plan, plain.state, plain.events.length], [undefined, undefined, 1]);
  assert.equal(plain.findings[0].code, 'not-a-card');
  assert.equal((await plain.add({ kind: 'done', step: 'b' }))[0].code, 'not-a-card');
  assert.deepEqual(await plain.add({ kind: 'note', text: 'all the same' }), []);
  const blob = new Blob([Uint8Array.of(255, 216, 255)], { type: 'image/jpeg' });
  await plain.add({ kind: 'photo', what: 'plug' }, { what: 'plug', blob, bytes: 3 });
  const { events, record } = await again(job);
  assert.deepEqual(events.map(({ kind }) => kind).sort(), ['done', 'note', 'photo']);
  assert.deepEqual(record.summary, { phase: 'open', done: 1, steps: 2 });
  assert.equal((await photosOf(record.id)).length, 1);
});

test('an event is tried and added as one that is about to be written', async () => {
  const adding = [];
  answers.replay = (input) => (adding.push(input.adding), replay(input));
  const job = await begin();
  await job.try({ kind: 'done', step: 'a' });
  await job.add({ kind: 'done', step: 'a' });
  await again(job);
  assert.deepEqual(adding, [false, true, true, false]);
});

/** Takes records away as the browser may, unseen by the page. */
const takeAway = (...of) => write(of, (tx) => of.forEach((name) => tx.objectStore(name).clear()));

test('what is gone from the store and held by a page is written back, and said', async (t) => {
  const job = await begin();
  const { id } = job.record;
  const beside = [{ job: id, kind: 'event', id: '1', text: '{}' }];
  await whole.putAll({ beside });
  await job.refresh();
  await job.add({ kind: 'done', step: 'a' });
  const { summary } = await store.job(id);
  const said = t.mock.method(writtenBack, 'see');
  for (const of of [['jobs', 'log', 'events', 'beside'], ['events'], ['jobs', 'log']]) {
    await takeAway(...of);
    await job.refresh();
    assert.deepEqual((await store.job(id)).summary, summary, of.join());
    assert.deepEqual(await eventsOf(id), job.events);
    assert.deepEqual(await besideOf(id), beside);
    assert.ok((await store.log()).some((line) => line.id === id));
  }
  assert.equal(said.mock.callCount(), 3);
  await takeAway('jobs', 'log', 'events');
  await job.add({ kind: 'done', step: 'b' });
  assert.equal(said.mock.callCount(), 4, 'also when something is added');
  assert.equal((await eventsOf(id)).length, 2);
  assert.ok(job.isDone('a') && job.isDone('b'));
});

test('events never shrink: what another window has not seen stays', async () => {
  const one = await begin();
  await one.add({ kind: 'done', step: 'a' });
  await takeAway('events');
  const other = await again(one);
  await other.add({ kind: 'done', step: 'b' });
  await one.refresh();
  assert.equal(one.events.length, 2);
  await other.refresh();
  assert.equal(other.events.length, 2);
});

test('what was erased on purpose is not written back', async (t) => {
  const job = await begin();
  await job.add({ kind: 'done', step: 'a' });
  const said = t.mock.method(writtenBack, 'see');
  await whole.removeAll();
  await assert.rejects(job.refresh());
  await assert.rejects(job.add({ kind: 'done', step: 'b' }));
  assert.equal(await store.job(job.record.id), undefined);
  assert.deepEqual(await eventsOf(job.record.id), []);
  assert.equal(said.mock.callCount(), 0);
  const next = await begin();
  await next.refresh();
  assert.ok(await store.job(next.record.id), 'what is begun after it stays');
});

test('two tabs: each adds to what is stored, not to what it remembers', async () => {
  const one = await begin();
  const other = await again(one);
  await one.add({ kind: 'done', step: 'a' });
  await other.add({ kind: 'done', step: 'b' });
  assert.deepEqual([other.isDone('a'), other.isDone('b')], [true, true]);
  assert.equal((await again(one)).record.summary.done, 2);
});

/** A job as it lies in the store, closed then if `finished`. */
const kept = (id, started, finished, cardId = 'one') =>
  putJob({ id, started, name: id, card: { id: cardId }, bench, summary: { finished } });

test('the core picks the job that this one is compared with, and what is tried is not kept', async () => {
  const asked = [];
  answers.replay = (input) => {
    asked.push(input);
    return replay(input);
  };
  let offered;
  answers['last-job'] = (input) => {
    offered = input;
    return { ok: { id: input.started > '2026-06' ? 'last' : undefined } };
  };
  await kept('first', '2026-01-01T08:00:00.000Z', '2026-01-01T10:00:00.000Z');
  await kept('last', '2026-05-01T08:00:00.000Z', '2026-05-01T10:00:00.000Z');
  await kept('open', '2026-06-01T08:00:00.000Z');
  await kept('strange', '2026-06-02T08:00:00.000Z', '2026-06-02T10:00:00.000Z', 'two');
  await kept('now', '2026-07-01T08:00:00.000Z');
  const seen = { id: 'e', time: '2026-05-01T09:00:00.000Z', kind: 'look', step: 'a' };
  await addEvent(await store.job('last'), seen);
  const job = await Job.open('now');
  assert.deepEqual(asked.at(-1).last, {
    card: { id: 'one' },
    bench,
    started: '2026-05-01T08:00:00.000Z',
    events: [{ ...seen, day: '2026-05-01' }],
    beside: [],
  });
  assert.equal(offered.started, '2026-07-01T08:00:00.000Z');
  assert.deepEqual(offered.jobs, [
    { id: 'now' },
    { id: 'open' },
    { id: 'last', finished: '2026-05-01T10:00:00.000Z' },
    { id: 'first', finished: '2026-01-01T10:00:00.000Z' },
  ]);
  const state = await job.try({ kind: 'done', step: 'a' });
  assert.deepEqual(state.done, ['a']);
  assert.ok(!job.isDone('a'));
  assert.deepEqual((await again(job)).events, []);
  await Job.open('first');
  assert.equal(asked.at(-1).last, undefined);
});

test('a last job that is too much does not keep this one from opening', async () => {
  answers['last-job'] = () => ({ ok: { id: 'last' } });
  answers.replay = (input) =>
    input.last ? { findings: [{ code: 'too-large', where: '/' }] } : replay(input);
  const job = await Job.open('now');
  assert.equal(job.state.next, 'b');
  assert.deepEqual(job.findings, []);
});
