// Whatever lies in the store beside what a person wrote: a job opens with all of that,
// and takes more. The real core works it out.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import fc from 'fast-check';
import { coreInNode } from '../../test/core-in-node.js';
import { FakeWorker } from '../../test/fake-worker.js';
import { Job } from './job.js';
import { eventsOf } from './job-events.js';
import * as store from './store.js';
import * as whole from './whole.js';

const core = await coreInNode();
globalThis.document = { visibilityState: 'hidden', documentElement: { lang: 'en' } };
globalThis.Worker = function () {
  return new FakeWorker(({ op, input }) => ({ output: core(op, input) }));
};

const card = JSON.parse(
  readFileSync(new URL('../../../specs/cards/tessaly-corda-570.json', import.meta.url), 'utf8'),
);
const bench = { system: 'metric' };
const plan = JSON.parse(core('plan', JSON.stringify({ card, bench }))).ok;
const steps = plan.steps.map(({ id }) => id);
const started = '2026-11-25T10:00:00.000Z';

/** What a person wrote: two steps done, a note and a reading. */
const mine = [
  { id: 'm1', seq: 1, kind: 'reading', step: steps[0], what: 'odometer', value: '12 400 km' },
  { id: 'm2', seq: 2, kind: 'done', step: steps[0] },
  { id: 'm3', seq: 3, kind: 'note', step: steps[1], text: 'mine' },
  { id: 'm4', seq: 4, kind: 'done', step: steps[1] },
].map((event, n) => ({ ...event, time: `2026-11-25T10:0${n + 1}:00.000Z`, day: '2026-11-25' }));

const members = [
  'time',
  'seq',
  'day',
  'kind',
  'step',
  'what',
  'of',
  'value',
  'text',
  'until',
  'signs',
];
const kinds = [
  'done',
  'reading',
  'note',
  'finish',
  'timer',
  'problem',
  'look',
  'bill',
  'photo',
  'choose',
];
const odd = fc.oneof(
  fc.jsonValue({ maxDepth: 4 }),
  fc.constantFrom('9999-12-31T23:59:59.999Z', '\ud83d', 'x'.repeat(70_000), 1e308, -1, 2 ** 53),
  fc.constantFrom(...steps.slice(0, 3), 'no-such-step', '__proto__', 'constructor', ...kinds),
  fc.constant(JSON.parse('['.repeat(200) + ']'.repeat(200))),
);
// Of every kind but an undo, which may take mine back.
const hostile = fc.dictionary(fc.oneof(fc.constantFrom(...members), fc.string()), odd);

/** A job of that name in the store: mine in the bundle or by themselves, the others too. */
async function plant(id, others, bundled) {
  const theirs = others.map((event, n) => ({ ...event, id: `x${n}` }));
  const rows = (list) => list.map((event) => ({ ...event, job: id }));
  await whole.putAll({
    jobs: [{ id, name: id, started, card, bench, steps, summary: {} }],
    bundles: [{ job: id, events: bundled ? theirs : mine }],
    events: rows(bundled ? mine : theirs),
  });
}

let jobs = 0;

test('no single event closes a job, hides what is mine, or keeps more from being written', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(hostile, { maxLength: 8 }), fc.boolean(), async (others, bundled) => {
      const id = `job-${jobs++}`;
      await plant(id, others, bundled);
      const job = await Job.open(id);
      assert.ok(!job.plain, JSON.stringify(job.findings));
      assert.equal(job.events.length, mine.length + others.length);
      for (const step of steps.slice(0, 2)) assert.ok(job.isDone(step), step);
      assert.ok(job.state.notes.some(({ text }) => text === 'mine'));
      const found = await job.add({ kind: 'note', step: steps[0], text: 'more' });
      assert.deepEqual(
        found.filter(({ grade }) => grade === 'refuse'),
        [],
      );
      const again = await Job.open(id);
      assert.ok(again.state.notes.some(({ text }) => text === 'more'));
      assert.equal((await eventsOf(id)).length, mine.length + others.length + 1);
    }),
    { numRuns: 60 },
  );
});

test('a record of any kind opens, as a job or as it stands, with all its events', async () => {
  const names = ['name', 'started', 'card', 'bench', 'steps', 'summary'];
  const changed = fc.dictionary(fc.constantFrom(...names), odd, { minKeys: 1, maxKeys: 2 });
  await fc.assert(
    fc.asyncProperty(changed, async (other) => {
      const id = `record-${jobs++}`;
      await plant(id, [], true);
      const record = { ...(await store.job(id)), ...other };
      await whole.putAll({ jobs: [record] });
      const job = await Job.open(id);
      assert.equal(job.events.length, mine.length);
      assert.ok(job.state || job.findings.length, 'it is said why');
      const found = await job.add({ kind: 'note', step: steps[0], text: 'all the same' });
      const refused = found.some(({ grade }) => grade === 'refuse');
      assert.ok(!refused, JSON.stringify(found));
      const [{ text }] = (await eventsOf(id)).filter((e) => !mine.some((m) => m.id === e.id));
      assert.equal(text, 'all the same');
      assert.ok(await store.log(), 'and the list is there');
    }),
    { numRuns: 60 },
  );
});
