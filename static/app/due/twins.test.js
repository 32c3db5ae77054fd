// Two bikes that follow one card, with the real core: what came out of one, what it was
// ridden and when its oil is due never reaches the other, until they are said to be one.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import { logList, bikesIn, filtered } from '../record/log-list.js';
import { bikeRow, tellBike } from '../store/bikes.js';
import { factsOf } from '../store/facts.js';
import { Job, startJob } from '../store/job.js';
import { lastOf } from '../store/last-job.js';
import { logOf } from '../store/of-bike.js';
import { addEvent, putJob } from '../store/write-job.js';
import * as store from '../store/store.js';
import { coreInNode } from '../../test/core-in-node.js';
import { FakeWorker } from '../../test/fake-worker.js';
import { sampleCard } from '../../test/browser/words.js';
import { byBike, outlookOf, remember } from './outlook.js';

const card = sampleCard('tessaly-corda-570');
const model = `${card.make} ${card.model}`;

before(async () => {
  const core = await coreInNode();
  globalThis.document = { visibilityState: 'hidden', documentElement: { lang: 'en' } };
  globalThis.Worker = function () {
    return new FakeWorker(({ op, input }) => ({ output: core(op, input) }));
  };
  // The one as a rider has it, and its twin: each with two changes, on interleaved days.
  await tellBike('twin', { kind: 'follows', value: card.id });
  await tellBike('twin', { kind: 'told', what: 'plate', value: 'KX 12' });
  await change('one-1', 200, '12 000 km', 'dry');
  await change('twin-1', 190, '50 000 km', 'dry', 'twin');
  await change('one-2', 20, '19 200 km', 'damp');
  await change('twin-2', 10, '51 000 km', 'dry', 'twin');
});

const dayAgo = (days, minutes = 0) =>
  new Date(Date.now() - days * 86_400_000 + minutes * 60_000).toISOString();

/** A change of oil as it lies in the store. */
async function change(id, days, odometer, leak, bike) {
  const parts = [
    { kind: 'reading', step: 'identify', what: 'odometer', value: odometer },
    { kind: 'look', step: 'look-oil', signs: { oil: leak === 'damp' ? 'fuel' : 'clean' } },
    { kind: 'reading', step: 'pour-engine', what: 'poured', of: 'engine', value: '2.5 L' },
    { kind: 'reading', step: 'top-up-engine', what: 'level', of: 'engine', value: 'middle' },
    { kind: 'finish' },
  ];
  const summary = { phase: 'closed', finished: dayAgo(days, 9), odometer };
  const record = { id, name: model, started: dayAgo(days), card, bench: {}, summary };
  if (bike) record.bike = bike;
  await putJob(record);
  for (const [n, part] of parts.entries())
    await addEvent(record, { id: `${id}-${n}`, seq: n + 1, time: dayAgo(days, n), ...part });
}

const ids = (lines) => lines.map(({ id }) => id);
const changedAt = async (bike) => (await outlookOf(await logOf(bike))).oils[0].changedAt[0];
const paceOf = async (bike) => (await outlookOf(await logOf(bike))).readings;
const lastIn = async (record) => {
  const last = await lastOf(record);
  return last?.events[0].value;
};
const begun = (bike) => ({ card, started: dayAgo(0), ...(bike && { bike }) });

test('each has its own log, last job, pace and due; the name tells them apart', async () => {
  assert.deepEqual(ids(await logOf(card.id)), ['one-2', 'one-1']);
  assert.deepEqual(ids(await logOf('twin')), ['twin-2', 'twin-1']);
  assert.deepEqual(
    [...byBike(await store.log())].map(([bike, jobs]) => [bike, ids(jobs), jobs[0].name]),
    [
      ['twin', ['twin-2', 'twin-1'], `KX 12 · ${model}`],
      [card.id, ['one-2', 'one-1'], model],
    ],
  );
  assert.deepEqual(
    [await changedAt(card.id), await changedAt('twin')].map((text) => text.replace(/\D/g, '')),
    ['19200', '51000'],
  );
  assert.deepEqual([await paceOf(card.id), await paceOf('twin')], [2, 2]);
  assert.deepEqual(
    [await lastIn(begun()), await lastIn(begun('twin'))],
    ['19 200 km', '51 000 km'],
  );
});

test('a job is compared with the last of its own bike alone', async () => {
  for (const [bike, odometer, findings] of [
    ['twin', '20 000 km', ['counter-back']], // less than its own, more than the other's
    [undefined, '20 000 km', []],
    ['twin', '51 500 km', []],
  ]) {
    const job = await Job.open(await startJob(card, { system: 'metric' }, bike));
    await job.add({ kind: 'reading', step: 'identify', what: 'odometer', value: odometer });
    const found = (job.state.findings ?? []).map(({ code }) => code);
    assert.deepEqual(
      found.filter((code) => code === 'counter-back'),
      findings,
      `${bike} ${odometer}`,
    );
    assert.equal(job.record.bike, bike, 'the bike that the card implies is written nowhere');
    assert.deepEqual(
      [job.bikeId, job.name],
      bike ? ['twin', `KX 12 · ${model}`] : [card.id, model],
    );
    await putJob({ ...job.record, started: dayAgo(400), summary: { phase: 'open' } });
  }
});

test('the filter of the log knows them apart', async () => {
  const list = logList(
    (await store.log()).filter(({ summary }) => summary.finished),
    (word) => word,
  );
  assert.deepEqual(
    bikesIn(list).map(({ bike, name, count }) => [bike, name, count]),
    [
      ['twin', `KX 12 · ${model}`, 2],
      [card.id, model, 2],
    ],
  );
  assert.deepEqual(ids(filtered(list, 'twin', '')), ['twin-2', 'twin-1']);
});

const closed = async (bike) => ids((await logOf(bike)).filter(({ summary }) => summary.finished));

test('joined, they are one in all that looks back; taken back, they are two again', async () => {
  assert.deepEqual(await tellBike('twin', { kind: 'joined', value: card.id }), []);
  const all = ['twin-2', 'one-2', 'twin-1', 'one-1'];
  assert.deepEqual(await closed(card.id), all);
  assert.deepEqual(await closed('twin'), all);
  assert.equal(await lastIn(begun()), '51 000 km');
  const joined = (await factsOf('bike', 'twin')).find(({ kind }) => kind === 'joined');
  assert.deepEqual(await tellBike('twin', { kind: 'undo', what: joined.id }), []);
  assert.deepEqual(
    [await closed(card.id), await closed('twin')],
    [
      ['one-2', 'one-1'],
      ['twin-2', 'twin-1'],
    ],
  );
});

test('a job that was on the other is moved, and with it what follows from it', async () => {
  await tellBike('twin', { kind: 'job', what: 'one-2' });
  assert.deepEqual(await closed(card.id), ['one-1']);
  assert.deepEqual(await closed('twin'), ['twin-2', 'one-2', 'twin-1']);
  assert.equal(await lastIn(begun()), '12 000 km');
  const moved = (await factsOf('bike', 'twin')).find(({ kind }) => kind === 'job');
  await tellBike('twin', { kind: 'undo', what: moved.id });
  assert.equal(await lastIn(begun()), '19 200 km');
});

test('of one that was laid aside nothing is due, and its record stays', async () => {
  await remember('twin', 'x', { remind: '2026-01-01' });
  await remember(card.id, 'y', { remind: '2026-01-02' });
  const due = async () => (await store.setting('due')).map(({ id }) => id);
  assert.deepEqual(await due(), ['twin', card.id]);
  await tellBike('twin', { kind: 'aside', what: 'sold' });
  assert.deepEqual(await due(), [card.id]);
  await remember('twin', 'x', { remind: '2026-01-01' });
  assert.deepEqual(await due(), [card.id]);
  assert.equal((await bikeRow('twin')).aside, 'sold');
  assert.deepEqual(await closed('twin'), ['twin-2', 'twin-1']);
});
