// Two changes of oil on one bike, as they lie in the store: 4 300 km apart.
import { sampleCard } from './words.js';

/** A change of oil days ago, with what else differs: [job, events]. */
export function changeOfOil(daysAgo, odometer, { found, left = '90 %', note, bike } = {}) {
  const card = sampleCard(bike ?? 'tessaly-corda-570');
  const began = Date.now() - daysAgo * 24 * 3600 * 1000;
  const at = (n) => new Date(began + n * 60_000).toISOString();
  const parts = [
    { kind: 'reading', step: 'identify', what: 'odometer', value: odometer },
    found && {
      kind: 'reading',
      step: 'level-found-engine',
      what: 'level',
      of: 'engine',
      value: found,
    },
    { kind: 'reading', step: 'pour-engine', what: 'poured', of: 'engine', value: '2.5 L' },
    { kind: 'reading', step: 'top-up-engine', what: 'level', of: 'engine', value: left },
    note && { kind: 'note', text: note },
    { kind: 'finish' },
  ].filter(Boolean);
  const id = `oil-${daysAgo}`;
  const job = {
    id,
    name: `${card.make} ${card.model}`,
    started: at(0),
    card,
    bench: { system: 'metric', place: 'garage' },
    summary: { done: 0, steps: 38, finished: at(parts.length), waiting: true },
  };
  return [job, parts.map((part, n) => ({ id: `${id}-${n}`, time: at(n + 1), ...part }))];
}

/** A quick rider's two changes: the odometer comes before the date. */
export const dueJobs = (bike) => [
  changeOfOil(130, '12 000 km', { bike }),
  changeOfOil(10, '19 200 km', { bike, found: '50 %', note: '=1+1, "quoted"; and more' }),
];
