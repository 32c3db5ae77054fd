// What the core is asked about a bike: as many of its jobs as it takes, the newest.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { beforeEach, test } from 'node:test';
import { FakeWorker } from '../../test/fake-worker.js';
import { logOf } from '../store/of-bike.js';
import { putJob } from '../store/write-job.js';
import { outlookOf } from './outlook.js';

const limits = { jobs: 3, call: 4000 };
let asked;

globalThis.document = { visibilityState: 'hidden' };
globalThis.Worker = function () {
  return new FakeWorker(({ op, input }) => {
    if (op === 'limits') return { output: JSON.stringify({ ok: limits }) };
    asked = input;
    return { output: '{"ok":{"first":"engine"}}' };
  });
};

beforeEach(() => (asked = undefined));

const card = { id: 'one' };
const job = (id, note) =>
  putJob({ id, started: id, name: id, card: { ...card, notes: [note] }, bench: {} });
const idsOf = (input) => JSON.parse(input).jobs.map(({ card: { notes } }) => notes[0].slice(0, 2));

test('the newest jobs, the newest last, and no more than are worth looking at', async () => {
  for (const id of ['1', '2', '3', '4']) await job(id, `n${id}`);
  const outlook = await outlookOf(await logOf('one'));
  assert.deepEqual(idsOf(asked), ['n2', 'n3', 'n4']);
  assert.equal(outlook.first, 'engine');
});

test('what is more than the core takes is left out, the oldest first, and never all', async () => {
  await job('3', `n3${'x'.repeat(1500)}`);
  await job('4', `n4${'€'.repeat(700)}`); // three bytes each
  await outlookOf(await logOf('one'));
  assert.deepEqual(idsOf(asked), ['n4'], 'bytes count, and not letters');
  assert.ok(Buffer.byteLength(asked) <= limits.call);
  await job('4', `n4${'x'.repeat(5000)}`);
  await outlookOf(await logOf('one'));
  assert.deepEqual(idsOf(asked), ['n4']);
});

test('how the bike is used may be asked for otherwise than its newest job says', async () => {
  await job('4', 'n4');
  await outlookOf(await logOf('one'), true);
  const { jobs } = JSON.parse(asked);
  assert.deepEqual(
    jobs.map(({ bench }) => bench.severe),
    [undefined, undefined, true],
  );
});
