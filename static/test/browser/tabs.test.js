// Two windows open on one job: each sees at once what was done in the other.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { done, goTo, startJob, stored, tapDone, untilStep } from './job-page.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import { enter, heading, tap, tapText, type, typed, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

/** Two windows of one browser, both on the first step of one job. */
async function twoWindows(t) {
  const { page: one, browser, url, complaints } = await openSite(t);
  await untilState(one, 'ready');
  await startJob(one, bike);
  const [{ id }] = await stored(one, 'jobs');
  const two = await browser.newPage();
  await two.goto(`${url}#/job/${id}`);
  await untilStep(two, 1);
  return { one, two, complaints };
}

/** Waits until the step on the screen is said to be done. */
function untilDone(page) {
  const ticked = (text) => document.querySelector(`[aria-label="${text}"]`) !== null;
  return page.waitForFunction(ticked, { polling }, words('job.is-done'));
}

test('each of two windows on a job sees the events of the other, and none is lost', async (t) => {
  const { one, two, complaints } = await twoWindows(t);

  await one.bringToFront();
  await enter(one, words('ask.odometer'), '12 400 km');
  await untilSeen(two, words('job.kept', { value: '12400 km' }));
  await done(one, 1);
  // The other window stays where it is, and says that the step is done.
  await untilDone(two);
  await untilStep(two, 1);

  await two.bringToFront();
  await tapDone(two);
  await untilStep(two, 2);
  await tapText(two, words('job.note'));
  await type(two, words('job.note'), 'from the other window');
  await tap(two, words('job.note.save'));
  await untilSeen(one, 'from the other window');
  const kinds = (await stored(one, 'events')).map(({ kind }) => kind).sort();
  assert.deepEqual(kinds, ['done', 'note', 'reading']);
  assert.deepEqual(complaints, []);
});

test('what is being typed in one window stays when the other adds something', async (t) => {
  const { one, two } = await twoWindows(t);
  await type(two, words('ask.odometer'), '98 765');
  await one.bringToFront();
  await done(one, 1);
  await untilDone(two);
  assert.equal(await typed(two, words('ask.odometer')), '98 765');
});

test('everything that is erased in one window is gone in the other', async (t) => {
  const { one, two } = await twoWindows(t);
  await one.bringToFront();
  await goTo(one, '#/keep/erase');
  await type(one, words('erase.label', { word: words('erase.word') }), words('erase.word'));
  await Promise.all([two.waitForNavigation(), tap(one, words('erase.do'))]);
  await untilSeen(two, words('job.unknown'));
  assert.equal(await heading(two), words('job.unknown'));
  await untilSeen(one, words('bikes.title'));
  assert.deepEqual(await stored(one, 'jobs'), []);
});
