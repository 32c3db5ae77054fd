// Jobs as they lie in the store: one under way, one with timers, one closed too
// early, one with every step done.
import { sampleCard } from './words.js';

const card = sampleCard('tessaly-corda-570');

const job = (id, started, summary) => ({
  id,
  name: `${card.make} ${card.model}`,
  started,
  card,
  bench: { system: 'metric', place: 'garage' },
  summary,
});

/** Events one second apart, from the parts that differ. */
const eventsFrom = (started, parts) =>
  parts.map((part, i) => ({
    id: `event-${i}`,
    time: new Date(Date.parse(started) + 1000 * i).toISOString(),
    ...part,
  }));

const done = (...steps) => steps.map((step) => ({ kind: 'done', step }));

const readings = [
  { kind: 'reading', step: 'identify', what: 'odometer', value: '12 400 km' },
  { kind: 'reading', step: 'level-found-engine', what: 'level', of: 'engine', value: 'above' },
  { kind: 'reading', step: 'measure-engine', what: 'drained', of: 'engine', value: '2,4 l' },
  { kind: 'reading', step: 'tighten-drain', what: 'torque', of: 'drain', value: '29 Nm' },
];

const noted = {
  kind: 'note',
  step: 'look-oil',
  text: 'Dark, no glitter.\nSmells of fuel a little.',
};

const open = job('open-job', '2026-11-24T09:00:00.000Z', {
  done: 2,
  steps: 38,
  next: 'check-oil-engine',
});

const ready = job('ready-job', '2026-11-22T09:00:00.000Z', { done: 37, steps: 38 });

const closedAt = '2026-11-20T09:00:00.000Z';

const closed = job('closed-job', closedAt, { done: 3, steps: 38, notes: 1, finished: closedAt });

const timed = job('timed-job', '2026-11-23T09:00:00.000Z', { done: 0, steps: 37 });

const hours = 3_600_000; // ms
const timer = (step, what, until) => ({
  kind: 'timer',
  step,
  what,
  until: new Date(until).toISOString(),
});
const problem = { kind: 'problem', step: 'lay-out', what: 'fell-in', value: 'do-not-start' };

const stopped = job('stopped-job', '2026-11-23T09:00:00.000Z', { done: 1, steps: 38 });

/** The jobs, each with its events; `steps` are those of the plan. */
export const sampleJobs = (steps) => [
  [open, eventsFrom(open.started, [...done('identify', 'lay-out'), noted])],
  [
    timed,
    eventsFrom(timed.started, [
      timer('run-out', 'drain', Date.now() + 9 * hours),
      timer('leak-look', 'leak', Date.now() - 3 * hours),
    ]),
  ],
  [
    closed,
    eventsFrom(closedAt, [
      ...done('identify', 'lay-out'),
      ...readings,
      noted,
      problem,
      { kind: 'finish' },
    ]),
  ],
  [stopped, eventsFrom(stopped.started, [...done('identify'), problem])],
  [
    ready,
    eventsFrom(ready.started, done(...steps.filter(({ after }) => !after).map(({ id }) => id))),
  ],
];
