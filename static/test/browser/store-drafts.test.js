// What is typed comes back after the browser was killed, and once it is kept it doesn't.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { setTimeout as pause } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import { comesTo } from './comes-to.js';
import { startJob, stored, tapDone, untilStep } from './job-page.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { tap, tapText, type, typed, untilSeen } from './person.js';
import { killBrowser, startAgain, visitOnce } from './restart.js';
import { temporaryFolder } from './launch.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

/** Waits until these texts, and no others, are written down as drafts. */
async function untilDrafts(page, ...wanted) {
  for (const from = Date.now(); ; await pause(polling)) {
    const texts = (await stored(page, 'drafts')).map(({ value }) => value).sort();
    if (isDeepStrictEqual(texts, wanted.sort())) return;
    if (Date.now() - from > patience()) assert.deepEqual(texts, wanted);
  }
}

test('what is typed outlives the browser, and goes when it is kept', async (t) => {
  const profile = await temporaryFolder(t);
  const url = await visitOnce(t, profile);
  const first = await startAgain(t, profile, url);
  await startJob(first.page, bike);
  await type(first.page, words('ask.odometer'), '12 4');
  await tapText(first.page, words('job.note'));
  await type(first.page, words('job.note'), 'half a sen');
  await untilDrafts(first.page, '12 4', 'half a sen');
  await killBrowser(first.browser);

  const { page, complaints } = await startAgain(t, profile, url);
  await tapText(page, words('bikes.resume'));
  await untilStep(page, 1);
  await comesTo(() => typed(page, words('ask.odometer')), '12 4');
  await comesTo(() => typed(page, words('job.note')), 'half a sen');
  await type(page, words('ask.odometer'), '12 400 km');
  await tap(page, words('job.keep'));
  await untilSeen(page, words('job.kept', { value: '12400 km' }));
  await untilDrafts(page, 'half a sen');
  await tapDone(page);
  await untilStep(page, 2);
  await untilDrafts(page);
  const texts = (await stored(page, 'events')).map(
    ({ kind, text, value }) => kind + (text ?? value ?? ''),
  );
  assert.deepEqual(texts.sort(), ['done', 'notehalf a sen', 'reading12 400 km']);
  assert.deepEqual(complaints, []);
});

test('what is typed is written down when the page is left', async (t) => {
  const profile = await temporaryFolder(t);
  const { page } = await startAgain(t, profile, await visitOnce(t, profile));
  await startJob(page, bike);
  await type(page, words('ask.odometer'), '12 4');
  const leave = () => {
    const field = document.activeElement;
    field.value = '12 47';
    field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    location.reload();
  };
  await Promise.all([page.waitForNavigation(), page.evaluate(leave)]);
  await untilStep(page, 1);
  await comesTo(() => typed(page, words('ask.odometer')), '12 47');
});
