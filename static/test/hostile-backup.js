// A whole and sealed backup in which each record is odd in its own way, and good ones
// stand between and behind them.
import { backupOf } from './backup-file.js';

const time = (n) => `2026-11-20T10:${String(n).padStart(2, '0')}:00.000Z`;
const deep = `${'['.repeat(60)}${']'.repeat(60)}`;

/** The records: of the jobs `names` says which can be worked out. */
export function hostileRecords(card) {
  const job = (id, more) => ({
    job: {
      id,
      name: `${card.make} ${card.model}`,
      started: time(0),
      card,
      bench: { system: 'metric', place: 'garage' },
      ...more,
    },
  });
  const event = (of, id, more) => ({
    event: { job: of, id, time: time(1), kind: 'note', text: `note ${id}`, ...more },
  });
  const odd = [
    { text: 7 },
    { text: 'half an emoji \ud83d' },
    { text: 'x'.repeat(30_000) },
    { text: `${'x'.repeat(4799)}👩‍🔧` },
    { time: '9999-12-31T23:59:59.999Z' },
    { time: 7 },
    { seq: 1e9 },
    { kind: 'wheel', wheels: [2] },
    { kind: 'done', step: 'toString' },
    { kind: 'undo', of: 'constructor' },
    { kind: 'reading', step: 'identify', what: 'odometer', value: { toString: 1 } },
    { kind: 'look', step: 'look-oil', signs: ['no'] },
    { kind: 'bill', what: 'bill', text: '{"lines":7}' },
    { kind: 'timer', step: 'warm-up', what: 'warm', until: 'never' },
    { day: 'yesterday' },
  ];
  return [
    { setting: { key: 'due', value: { length: 1 } } },
    { setting: { key: 'toString', value: [] } },
    { setting: { key: 'theme', value: ['dark'] } },
    { card: { key: 'odd', card: { ...card, id: 'odd', bolts: 7 }, changed: time(1) } },
    { card: { key: 'good', card: { ...card, id: 'good', make: 'Plainford' }, changed: time(1) } },
    ...odd.flatMap((more, n) => [
      job(`odd-${n}`),
      event(`odd-${n}`, 'before'),
      event(`odd-${n}`, 'odd', more),
      { event: { job: `odd-${n}`, id: 'after', time: time(3), kind: 'note', text: 'after it' } },
    ]),
    job('constructor'),
    event('constructor', '__proto__'),
    job('full'),
    ...Array.from({ length: 320 }, (_, n) => event('full', `${n}`, { text: 'x'.repeat(15_000) })),
    job('no-card', { card: null }),
    event('no-card', '1'),
    job('hovercraft', { card: { ...card, layout: 'hovercraft' } }),
    event('hovercraft', '1'),
    job('twice'),
    event('twice', '1'),
    job('twice', { card: { ...card, bolts: card.bolts.slice(1) } }),
    event('twice', '1', { text: 'another' }),
    `{"event":{"job":"twice","id":"2","text":${deep}}}`,
    '{"event":{',
    { wheel: { id: '1' } },
    { photo: { job: 'twice', id: '1', what: 'pan', data: '*' } },
    job('behind'),
    event('behind', '1', { text: 'came all the same' }),
  ];
}

/** Jobs of it that can be worked out. */
export const goodJobs = [
  ...Array.from({ length: 15 }, (_, n) => `odd-${n}`),
  'constructor',
  'full',
  'twice',
  'behind',
];

/** The text of the backup. */
export const hostileBackup = async (card) => (await backupOf(hostileRecords(card))).text();

/** The text of a backup with so many records that can't be read. */
export async function unreadBackup(card, count) {
  const [job] = hostileRecords(card).filter((record) => record.job);
  const events = Array.from({ length: count }, (_, n) => ({
    event: { job: job.job.id, id: `e${n}`, time: time(n % 60), kind: 'note', text: n },
  }));
  return (await backupOf([job, ...events])).text();
}
