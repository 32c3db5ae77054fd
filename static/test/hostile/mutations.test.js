// Sealed backups with one change or a few, as an error or an enemy would make them: each
// is refused as a whole or put in, and no job that is here is harmed.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { canonical } from '../../app/backup/merge.js';
import { readBackup, restore } from '../../app/backup/restore.js';
import { makeBackup } from '../../app/backup/write.js';
import { Chance, seedFrom } from '../chance.js';
import { standing, unharmed } from './laws.js';
import { mutated } from './mutate.js';
import { MemoryPhone, store, whole } from './phone.js';

const seed = seedFrom(process.env.SEED ?? '12');
const count = Number(process.env.MUTATIONS ?? 1000);
const together = 10; // changed files that come to one phone

const card = JSON.parse(
  readFileSync(new URL('../../../testdata/card-minimal.json', import.meta.url), 'utf8'),
);
const time = (n) => `2026-11-20T10:00:${String(n).padStart(2, '0')}.000Z`;
const made = '2026-11-25T12:00:00.000Z';

const jobOf = (id) => ({
  id,
  name: 'Plainford One',
  started: time(0),
  card: { ...card, id: `bike-${id}` },
  bench: { system: 'metric', place: 'garage' },
  summary: {},
});

const happened = [
  { kind: 'reading', step: 'identify', what: 'odometer', value: '12 400 km' },
  { kind: 'done', step: 'identify' },
  { kind: 'note', step: 'lay-out', text: 'All is here.' },
  { kind: 'done', step: 'lay-out' },
  { kind: 'photo', step: 'look-oil', what: 'pan' },
  { kind: 'note', step: 'lay-out', text: 'A slip.' },
  { kind: 'undo', of: 'e5' },
  { kind: 'done', step: 'tray' },
  { kind: 'note', step: 'no-longer-here', text: 'At a step of another version.' },
  { kind: 'problem', step: 'tray', what: 'fell-in', value: 'do-not-start' },
  { kind: 'finish' },
];

/** Puts a job into the store, with the first so many of what happened. */
async function fill(id, much) {
  const events = happened.slice(0, much).map((event, n) => ({
    job: id,
    id: `e${n}`,
    time: time(n),
    ...(n % 2 ? { seq: n + 1, day: '2026-11-20' } : {}),
    ...event,
  }));
  const photos = events
    .filter(({ kind }) => kind === 'photo')
    .map((event) => ({
      job: id,
      id: event.id,
      what: event.what,
      blob: new Blob([Uint8Array.of(255, 216, 1, 2)], { type: 'image/jpeg' }),
      bytes: 4,
    }));
  await whole.putAll({ jobs: [jobOf(id)], events, photos });
}

async function fillCard(make, day) {
  const own = { ...card, id: 'own', make };
  const bike = { id: 'own', name: `${make} One` };
  const changed = `2026-11-${day}T00:00:00.000Z`;
  await store.putCard({ key: 'own', card: own, text: JSON.stringify(own), bike, changed });
}

/** The lines of a backup of another phone, which went on with one of the jobs that are here. */
async function fromElsewhere() {
  await new MemoryPhone().takeUp();
  await fill('open', 8);
  await fill('closed', 11);
  await fill('theirs', 5);
  await fillCard('Elsewhere', 21);
  await store.saveSetting('system', 'us');
  const other = {
    id: 'e2',
    time: time(2),
    kind: 'note',
    step: 'lay-out',
    text: 'Not all is here.',
  };
  const unread = '{"event":{"job":"open","id":"odd","kind":7}}';
  await whole.putAll({
    beside: [{ job: 'open', kind: 'event', id: 'e2', text: canonical(other) }],
    aside: [
      { key: `event ${unread}`, kind: 'event', text: unread, why: [], from: made, time: made },
    ],
  });
  const file = await makeBackup({ made, photos: true, plain: true });
  return (await file.text()).trimEnd().split('\n').slice(0, -2);
}

/** A phone with jobs, a card and settings of its own. */
async function here() {
  await new MemoryPhone().takeUp();
  await fill('open', 5);
  await fill('closed', 11);
  await fill('mine', 7);
  await fillCard('Plainford', 20);
  await store.saveSetting('system', 'metric');
  return standing();
}

/** Restores a file; resolves to whether it was put in. */
async function restored(file, what) {
  let read;
  try {
    read = await readBackup(file);
  } catch (error) {
    assert.match(error.message, /^restore\.[a-z-]+$/, `${what}\nis refused without a word`);
    return false;
  }
  try {
    await restore(read);
  } catch (error) {
    assert.fail(`${what}\nbreaks off: ${error.stack}`);
  }
  return true;
}

test(`${count} changed backups, with the seed ${seed}: what is here stays, and every job opens`, async () => {
  const texts = await fromElsewhere();
  const chance = new Chance(seed);
  let before;
  let taken = 0;
  for (let n = 0; n < count; n++) {
    const { name, file } = await mutated(texts, chance);
    const what = `number ${n} with the seed ${seed}: ${name}`;
    if (n % together === 0) before = await here();
    if (await restored(file, what)) taken++;
    await unharmed(before, what);
  }
  assert.ok(taken > count / 4, `only ${taken} of ${count} were put in`);
});
