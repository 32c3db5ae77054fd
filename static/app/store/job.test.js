import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { beforeEach, test } from 'node:test';
import { Job, startJob } from './job.js';
import * as store from './store.js';
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

const card = { make: 'Tessaly', model: 'Corda 650' };
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
  assert.equal(job.record.name, 'Tessaly Corda 650');
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

test('time never goes backwards, whatever the clock and the order in the store', async (t) => {
  t.mock.timers.enable({ apis: ['Date'], now: Date.parse('2026-11-25T10:00:00.000Z') });
  const job = await begin();
  for (let i = 0; i < 9; i++) await job.add({ kind: 'done', step: 'a' });
  t.mock.timers.setTime(Date.parse('2020-01-01T00:00:00.000Z'));
  // The store gives events back in the order of their ids, which are random.
  const later = await again(job);
  await later.add({ kind: 'done', step: 'b' });
  const times = later.events.map(({ time }) => time);
  assert.equal(new Set(times).size, 10);
  assert.equal(times.toSorted().at(-1), times.at(-1));
  assert.match(times.at(-1), /^2026-11-25T10:00:00\.009Z$/);
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
  store.putJob({ id, started, name: id, card: { id: cardId }, bench, summary: { finished } });

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
  await store.addEvent(await store.job('last'), seen);
  const job = await Job.open('now');
  assert.deepEqual(asked.at(-1).last, { card: { id: 'one' }, bench, events: [seen] });
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
