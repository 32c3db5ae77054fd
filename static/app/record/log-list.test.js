// The log: what is found in it, and what its filters let through.
import assert from 'node:assert/strict';
import test from 'node:test';
import { search } from '../words/search.js';
import { lineOf } from '../store/log-line.js';
import { bikesIn, filtered, filterNames, logList } from './log-list.js';

const word = (id, { grade } = {}) =>
  ({
    'log.home': 'only to get home',
    'role.engine': 'engine',
    'debris.stop': 'Stop',
    'grade.sae': `SAE ${grade}`,
  })[id] ?? id;

/** A line of the log with a summary as a replay answers it. */
const line = (id, started, summary, bike = 'corda') =>
  lineOf({ id, card: { id: bike }, name: bike, started, bench: {}, summary });

const lines = [
  line('full', '2026-05-02T09:00:00.000Z', {
    phase: 'waiting',
    done: 2,
    steps: 38,
    finished: '2026-05-02T10:00:00.000Z',
    odometer: '12340 km',
    oils: [{ role: 'role.engine', poured: '2.5 L', grade: '10W-40' }],
    verdict: 'debris.stop',
    watch: true,
    notes: 2,
    photos: 2,
    said: 'Smells of fuel Café wash',
  }),
  line('bare', '2026-06-01T09:00:00.000Z', { phase: 'open', steps: 38 }),
  line(
    'other',
    '2025-01-01T09:00:00.000Z',
    { phase: 'closed', steps: 2, finished: 'x', verdict: 'debris.normal', home: true },
    'heron',
  ),
];
const list = logList(lines, word);
const found = (typed) => search(list, typed).map(({ id }) => id);

test('a job is found by bike, day, odometer, oil, note and verdict', () => {
  for (const typed of [
    'corda',
    '2026-05',
    '12340',
    '10w-40',
    'SAE 10W-40',
    'fuel',
    'cafe',
    'STOP',
    'engine 2.5',
  ])
    assert.ok(found(typed).includes('full'), typed);
  assert.deepEqual(found('2025'), ['other']);
  assert.deepEqual(found('get home'), ['other']);
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
