// The log: what is found in it, and what its filters let through.
import assert from 'node:assert/strict';
import test from 'node:test';
import { search } from '../words/search.js';
import { summaryOf } from '../store/job-summary.js';
import { lineOf } from '../store/log-line.js';
import { bikesIn, filtered, filterNames, logList } from './log-list.js';

const card = { id: 'corda', circuits: [{ id: 'engine', oil: { grades: ['10W-40', '15W-50'] } }] };
const word = (id) => ({ 'role.engine': 'engine', 'debris.stop': 'Stop' })[id] ?? id;

/** A line of the log as a job of that state leaves it. */
const line = (id, started, state, of = card) =>
  lineOf({ id, card: of, name: of.id, started, bench: {}, summary: summaryOf(state, of) });

const lines = [
  line('full', '2026-05-02T09:00:00.000Z', {
    done: ['a', 'b'],
    steps: 38,
    finished: '2026-05-02T10:00:00.000Z',
    waiting: true,
    notes: [{ text: 'Smells of fuel' }, { text: 'Café wash' }],
    readings: [
      { what: 'odometer', texts: ['12300 km', '7640 mi'] },
      { what: 'odometer', texts: ['12340 km', '7670 mi'] },
    ],
    oils: [
      { circuit: 'engine', role: 'role.engine', poured: ['2.5 L', '2.64 US qt'] },
      { circuit: 'gearbox', role: 'role.gearbox' },
    ],
    looks: [{}],
    verdict: 'debris.stop',
    photos: [{}, {}],
  }),
  line('bare', '2026-06-01T09:00:00.000Z', { steps: 38 }),
  line('other', '2025-01-01T09:00:00.000Z', { steps: 2, finished: 'x' }, { id: 'heron' }),
];
const list = logList(lines, word);
const found = (typed) => search(list, typed).map(({ id }) => id);

test('a summary is what a replay says, of the last reading', () => {
  const { summary } = lines[0];
  assert.equal(summary.odometer, '12340 km');
  assert.deepEqual(summary.oils, [{ role: 'role.engine', poured: '2.5 L', grade: '10W-40' }]);
  assert.deepEqual([summary.done, summary.notes, summary.photos], [2, 2, 2]);
  assert.equal(summary.verdict, 'debris.stop');
  assert.equal(lines[1].summary.verdict, undefined, 'nobody looked');
});

test('a job is found by bike, day, odometer, oil, note and verdict', () => {
  for (const typed of ['corda', '2026-05', '12340', '10w-40', 'fuel', 'cafe', 'STOP', 'engine 2.5'])
    assert.ok(found(typed).includes('full'), typed);
  assert.deepEqual(found('2025'), ['other']);
  assert.deepEqual(found('12300'), [], 'a reading that was replaced is not the job’s');
});

test('filters let through what they say, by bike too', () => {
  const through = (bike, filter) => filtered(list, bike, filter).map(({ id }) => id);
  assert.deepEqual(through('', ''), ['full', 'bare', 'other']);
  assert.deepEqual(through('heron', ''), ['other']);
  assert.deepEqual(Object.fromEntries(filterNames.map((name) => [name, through('', name)])), {
    open: ['bare'],
    waiting: ['full'],
    watch: ['full'],
    noted: ['full'],
  });
  assert.deepEqual(through('heron', 'open'), []);
});

test('each bike stands once, with how many jobs it has', () => {
  assert.deepEqual(bikesIn(list), [
    { bike: 'corda', name: 'corda', count: 2 },
    { bike: 'heron', name: 'heron', count: 1 },
  ]);
});
