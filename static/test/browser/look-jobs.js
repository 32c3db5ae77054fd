// Two jobs on one bike: what came out at the first, and the second, at which nobody
// has looked yet.
import { sampleCard } from './words.js';

const card = sampleCard('tessaly-corda-570');

/** A job on the bike; with `finished` it was closed then. */
export const lookJob = (id, started, finished) => ({
  id,
  name: `${card.make} ${card.model}`,
  started,
  card,
  bench: { system: 'metric', place: 'garage' },
  summary: finished ? { finished } : {},
});

const event = (id, time, rest) => ({ id, time: `2026-05-02T${time}:00.000Z`, ...rest });

/** The first job, with fuzz on the magnet: [job, events]. */
export const lookedThen = [
  lookJob('then', '2026-05-02T08:00:00.000Z', '2026-05-02T10:00:00.000Z'),
  [
    event('e1', '09:00', {
      kind: 'reading',
      step: 'identify',
      what: 'odometer',
      value: '12 340 km',
    }),
    event('e2', '09:10', { kind: 'look', step: 'look-magnet-drain', signs: { found: 'fuzz' } }),
    event('e3', '10:00', { kind: 'finish' }),
  ],
];

/** The second job, without any events. */
export const lookNow = lookJob('now', '2026-11-25T09:00:00.000Z');
