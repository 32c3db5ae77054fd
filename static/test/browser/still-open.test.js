// What is open in a job is on every screen of it until it is closed; what is to be
// touched can be ticked; at the roadside one is offered to get home.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { tapAt } from './finger.js';
import { eventsTo } from './job-events.js';
import { goTo, openStep, plant, startJob, stored, tapDone, untilPast } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { choose, tap, tapText, untilSeen } from './person.js';
import { killBrowser, startAgain, visitOnce } from './restart.js';
import { patience } from './patience.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;
const signal = words('signal.WARNING');
const fold = 740 - 130; // px: above the bar under the thumb

/** Where the job stands, as the core has it. */
const stateOf = async (page) => {
  const [job] = await stored(page, 'jobs');
  const events = await stored(page, 'events');
  const { ok } = await page.evaluate((input) => globalThis.tidysump.core.call('replay', input), {
    card: job.card,
    bench: job.bench,
    steps: job.steps,
    events,
  });
  return ok;
};

/** What the strip says, and whether as a caution; undefined where there is none. */
const strip = (page) =>
  page.evaluate(() => {
    const found = document.querySelector('.still-open');
    return found?.innerText.replace(/\s+/g, ' ');
  });

const untilStrip = (page, there) =>
  page.waitForFunction(
    (want) => Boolean(document.querySelector('.still-open')) === want,
    { polling, timeout: patience() },
    there,
  );

test('what is open is on every screen of the job until it is closed', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  const [job] = await stored(page, 'jobs');
  await goTo(page, '#/record'); // a job that is on the screen doesn't read its events again
  await plant(page, job, eventsTo(job, 'clean-seats'));
  const { open, openAt: warned } = await stateOf(page);
  const openAt = warned.map(({ step }) => step);
  assert.ok(open.length > 1 && openAt.length > 1, JSON.stringify({ open, openAt }));
  assert.ok(openAt.some((id) => id.startsWith('pour-')) && openAt.includes('first-start'), openAt);

  const first = `${open.length} open: ${open[0].count} × ${words(open[0].purpose)}`;
  const from = encodeURIComponent(JSON.stringify({ job: job.id, step: 'clean-seats' }));
  const screens = [
    ...job.steps.map((id) => `#/job/${job.id}/step/${id}`),
    `#/job/${job.id}/steps`,
    `#/record/${job.id}`,
    `#/bill/${job.id}`,
    `#/trouble/${from}`,
    `#/trouble/fell-in/${from}`,
  ];
  for (const screen of screens) {
    await goTo(page, screen);
    await untilStrip(page, true);
    const said = await strip(page);
    assert.ok(said.includes(first), `${screen}: ${said}`);
    const id = screen.match(/step\/(.+)/)?.[1];
    assert.equal(said.includes(signal), openAt.includes(id), `${screen}: ${said}`);
    if (!id || openAt.includes(id)) continue;
    const line = await page.$eval('.still-open summary', (e) => e.getBoundingClientRect().height);
    assert.ok(line < 70, `${screen}: the strip is ${line} px high`);
  }
  assert.deepEqual(complaints, []);
});

test('the strip leads to the step that closes, and goes with the last of it', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  const [job] = await stored(page, 'jobs');
  await goTo(page, '#/record');
  await plant(page, job, eventsTo(job, 'clean-seats'));
  for (let open; ({ open } = await stateOf(page)), open;) {
    await goTo(page, `#/job/${job.id}/step/decide`);
    await untilStrip(page, true);
    await tapAt(page, '.still-open summary');
    await tapAt(page, '.still-open .closes');
    await page.waitForFunction(
      (step) => location.hash.endsWith(`/step/${step}`),
      { polling, timeout: patience() },
      open[0].step,
    );
    await tapDone(page);
    await untilPast(page, open[0].step);
    const { open: left = [] } = await stateOf(page);
    assert.deepEqual(left, open.slice(1));
  }
  await goTo(page, `#/job/${job.id}/step/first-start`);
  assert.equal(await strip(page), undefined);
  await tap(page, words('job.undo'));
  await untilStrip(page, true);
  assert.deepEqual(complaints, []);
});

test('the instruction stays on the first screen while something is open', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  const [job] = await stored(page, 'jobs');
  const places = async () => {
    const tops = {};
    for (const id of job.steps) {
      await goTo(page, `#/job/${job.id}/step/${id}`);
      tops[id] = await page.$eval('.do', (e) => e.getBoundingClientRect().top + scrollY);
    }
    return tops;
  };
  const before = await places();
  await goTo(page, '#/record');
  await plant(page, job, eventsTo(job, 'clean-seats'));
  const { openAt: warned, done } = await stateOf(page); // a step that is done has a mark in its heading
  const openAt = warned.map(({ step }) => step);
  const after = await places();
  for (const id of job.steps)
    if (!openAt.includes(id) && !done.includes(id))
      assert.ok(
        after[id] <= before[id] + 4 || after[id] < fold,
        `${id}: the instruction was at ${before[id]} px and is at ${after[id]} px`,
      );
});

test('what was ticked outlives a killed browser, and goes when the step is done', async (t) => {
  const profile = await temporaryFolder(t);
  const url = await visitOnce(t, profile);
  const first = await startAgain(t, profile, url);
  await startJob(first.page, bike);
  await openStep(first.page, 'count');
  const [label] = await first.page.$$('.tally label');
  const size = await label.boundingBox();
  assert.ok(size.height >= 64 && size.width > 250, JSON.stringify(size));
  await tapAt(first.page, '.tally label');
  await untilSeen(first.page, words('draft.written'));
  await killBrowser(first.browser);

  const second = await startAgain(t, profile, url);
  await openStep(second.page, 'count');
  const boxes = (page) => page.$$eval('.tally input', (all) => all.map(({ checked }) => checked));
  const before = await boxes(second.page);
  assert.deepEqual(before, [true, ...before.slice(1).map(() => false)]);
  assert.ok(before.length > 1, 'there are several places');
  await tapDone(second.page);
  await untilPast(second.page, 'count');
  assert.deepEqual(await stored(second.page, 'drafts'), []);
  await openStep(second.page, 'count');
  assert.equal((await second.page.$$('ol.tally li')).length, before.length);
  assert.deepEqual([...first.complaints, ...second.complaints], []);
});

test('the roadside offers to get home first, with the whole job one tap away, and back', async (t) => {
  const { page, complaints } = await openSite(t);
  await tapText(page, bike);
  await untilSeen(page, words('plan.start'));
  assert.equal(await page.$('.short-form'), null, 'in the garage it is the whole job');
  await tapAt(page, '.today summary');
  await choose(page, words('plan.place.roadside'));
  await untilSeen(page, words('plan.get-home'));
  await tap(page, words('plan.get-home.whole'));
  await untilSeen(page, words('plan.whole'));
  await tap(page, words('plan.whole.get-home'));
  await untilSeen(page, words('plan.get-home'));
  await choose(page, words('plan.helper'));
  await tap(page, words('plan.start'));
  await page.waitForSelector('.step');
  const [{ bench }] = await stored(page, 'jobs');
  assert.deepEqual([bench.place, bench.getHome, bench.helper], ['roadside', true, true]);
  assert.deepEqual(complaints, []);
});
