// Files to be restored: backups of jobs of another phone.
import { Buffer } from 'node:buffer';
import { digestOf, seal } from '../../app/backup/seal.js';
import { sampleCard } from '../browser/words.js';

/** How many events each of their jobs has. */
export const eventsEach = 12;

const card = sampleCard('tessaly-corda-570');
const started = Date.parse('2026-10-01T08:00:00.000Z');
const at = (seconds) => new Date(started + 1000 * seconds).toISOString();

const job = (id) => ({
  id,
  name: `${card.make} ${card.model}`,
  started: at(0),
  card,
  bench: { system: 'metric', place: 'garage' },
});

const events = (id) =>
  Array.from({ length: eventsEach }, (_, n) => ({
    job: id,
    id: `${id}-${n}`,
    time: at(n),
    kind: 'note',
    step: 'identify',
    text: `Note ${n} of another phone.`,
  }));

/** A sealed backup of jobs with these ids: its bytes. */
export async function backupOf(ids) {
  const lines = [
    { format: 'tidysump-backup', version: 1, made: at(60) },
    ...ids.flatMap((id) => [{ job: job(id) }, ...events(id).map((event) => ({ event }))]),
    {
      end: { settings: 0, cards: 0, jobs: ids.length, events: ids.length * eventsEach, photos: 0 },
    },
  ];
  const body = new Blob(lines.map((line) => `${JSON.stringify(line)}\n`));
  const whole = new Blob([body, seal(await digestOf(body, body.size), false)]);
  return Buffer.from(await whole.arrayBuffer());
}
