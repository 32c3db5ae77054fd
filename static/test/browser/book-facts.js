// What somebody wrote into their own books, and a job that belongs there, as they lie in
// the store.
import { sampleCard } from './words.js';

/** The last days: what is written that long ago. */
const ago = (days) => new Date(Date.now() - days * 24 * 3600 * 1000).toISOString();

/** A fact of a book, told days ago. */
const fact = (book, of, seq, days, told) => ({
  book,
  of,
  id: `${of}-${seq}`,
  time: ago(days),
  day: ago(days).slice(0, 10),
  seq,
  ...told,
});

const check = {
  mass: '10 kg',
  lever: '400 mm',
  own: '1.2 kg',
  centre: '180 mm',
  massOff: '20 g',
  leverOff: '1 mm',
};

/** A can, oil on the shelf and a wrench that was found right; it was used for that job since. */
export const bookFacts = (used) => [
  fact('oil', 'can-1', 1, 40, { kind: 'can', what: 'engine', value: '10 L', text: 'Blue can' }),
  fact('oil', 'can-1', 2, 30, { kind: 'drained', what: 'engine', value: '3 L', job: 'before' }),
  {
    ...fact('oil', 'can-2', 1, 40, { kind: 'can', what: 'gear', value: '', text: 'Small can' }),
    time: '2026-03-01T09:00:00.000Z',
  },
  fact('oil', 'can-2', 2, 30, { kind: 'drained', what: 'gear', value: '0.8 L' }),
  fact('oil', 'can-2', 3, 20, { kind: 'handed-in', value: '2026-03-05', text: 'Yard' }),
  fact('shelf', 'oil-1', 1, 40, {
    kind: 'item',
    what: 'oil',
    value: '4 L',
    text: 'Red bottles',
    signs: { grade: '10W-40', marks: 'JASO MA2, API SL', size: '1 L' },
  }),
  fact('shelf', 'washer-1', 1, 40, {
    kind: 'item',
    what: 'washer',
    value: '9',
    text: 'Washers',
    signs: { seal: 'flat-copper', size: '14 x 20 x 1.5' },
  }),
  fact('wrench', 'wrench-1', 1, 60, {
    kind: 'wrench',
    text: 'Long red one',
    signs: { low: '20 N·m', high: '100 N·m', drive: '1/2 in', tool: 'click' },
  }),
  fact('wrench', 'wrench-1', 2, 50, {
    kind: 'checked',
    signs: { ...check, readings: '41.5 N·m' },
  }),
  ...(used ? [fact('wrench', 'wrench-1', 3, 9, { kind: 'used', job: used })] : []),
];

/** A job that measured what came out and what went in: [job, events]. */
export function drainedJob() {
  const card = sampleCard('tessaly-corda-570');
  const [began] = ago(10).split('T');
  const at = (n) => `${began}T09:0${n}:00.000Z`;
  const parts = [
    { kind: 'reading', step: 'measure-engine', what: 'drained', of: 'engine', value: '2.3 L' },
    { kind: 'reading', step: 'pour-engine', what: 'poured', of: 'engine', value: '2.4 L' },
    { kind: 'finish' },
  ];
  const id = 'drained-job';
  const job = {
    id,
    name: `${card.make} ${card.model}`,
    started: at(0),
    card,
    bench: { system: 'metric', place: 'garage' },
    summary: { phase: 'waiting', done: 0, steps: 38, finished: at(3) },
  };
  return [job, parts.map((part, n) => ({ id: `${id}-${n}`, time: at(n + 1), ...part }))];
}
