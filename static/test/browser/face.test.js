// What a job shows first once it is finished: four figures as they were told, and "not
// told" where nobody did.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo, plant } from './job-page.js';
import { openSite } from './open-site.js';
import { untilState } from './page.js';
import { seen, tap, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const started = '2026-11-24T09:00:00.000Z';

/** The face of a job with these readings, as soon as it is finished. */
async function faceOf(t, ...readings) {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  const job = {
    id: 'a-job',
    name: `${card.make} ${card.model}`,
    started,
    card,
    bench: { system: 'metric', place: 'garage' },
    summary: { done: 0, steps: 40, next: 'identify' },
  };
  const events = readings.map(([step, what, of, value], i) => ({
    id: `e${i}`,
    seq: i + 1,
    time: new Date(Date.parse(started) + 1000 * i).toISOString(),
    day: '2026-11-24',
    kind: 'reading',
    step,
    what,
    ...(of ? { of } : {}),
    value,
  }));
  await plant(page, job, events);
  await goTo(page, '#/job/a-job/steps');
  await tap(page, words('job.finish'));
  await untilSeen(page, words('face.share'));
  const shown = await page.$$eval('.face .deeds > div', (all) =>
    all.map((one) => one.innerText.replace(/\s+/g, ' ').replace(/[\u2066-\u2069]/g, '')),
  );
  assert.deepEqual(complaints, []);
  return { page, shown };
}

test('a finished job shows what was told of it, in four figures', async (t) => {
  const { page, shown } = await faceOf(
    t,
    ['identify', 'odometer', '', '12 400 km'],
    ['tighten-drain', 'torque', 'drain', '28 Nm'],
    ['pour-engine', 'poured', 'engine', '2,2 l'],
    ['top-up-engine', 'poured', 'engine', '0.2 l'],
    ['top-up-engine', 'level', 'engine', 'middle'],
  );
  assert.equal(shown.length, 4);
  for (const [i, [name, figure]] of [
    ['face.in', '2.4 L'],
    ['face.plug', '28 N·m'],
    ['face.level', words('level.middle')],
    ['face.odometer', '12400 km'],
  ].entries()) {
    assert.ok(shown[i].startsWith(words(name)), shown[i]);
    assert.ok(shown[i].includes(figure), `${shown[i]}: ${figure}`);
  }
  assert.ok(await page.$('.face a[href="#/sheet/a-job"]'), 'the sheet is one tap away');
});

test('what nobody told is shown as that', async (t) => {
  const { shown } = await faceOf(t);
  assert.equal(shown.length, 4);
  for (const deed of shown) assert.ok(deed.includes(words('face.not-told')), deed);
});

test('the face says the next change by odometer and day, the sheet from where a distance counts', async (t) => {
  const { page } = await faceOf(t, ['identify', 'odometer', '', '12 400 km']);
  const { distance } = card.interval;
  const next = await page.$eval('.face > p', (e) => e.innerText.replace(/\s+/g, ' '));
  assert.ok(next.includes(`${12400 + distance.value} km`), next);
  assert.match(next, new RegExp(words('due.by', { day: '\\d+ \\w+ \\d{4}' })));
  const counted = words('paper.due.distance-after');
  await goTo(page, '#/sheet/a-job');
  await untilSeen(page, words('paper.due.first'));
  assert.ok(!(await seen(page)).includes(counted));
});

test('a sheet of a job without a reading of the odometer says from where its distance counts', async (t) => {
  const { page } = await faceOf(t);
  await goTo(page, '#/sheet/a-job');
  await untilSeen(page, `${card.interval.distance.value} km`);
  await untilSeen(page, words('paper.due.distance-after'));
});
