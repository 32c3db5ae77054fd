// What goes wrong on a phone: a dead worker, hostile text, two tabs at once. The
// job goes on, and text is only text.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { done, goTo, planOf, plant, startJob, stored, tapDone, untilStep } from './job-page.js';
import { hostileJob, markup, wordId } from './hostile-texts.js';
import { figuresTurned, staysAmiss, stickingOut } from './layout.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import { alerts, untilSeen } from './person.js';
import { sampleJobs } from './sample-jobs.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;
const [openJob] = sampleJobs([]);

test('the core dies with an error in mid-job: the next tap finds a new one', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  const [worker] = page.workers();
  await worker.evaluate(() => {
    setTimeout(() => {
      throw new Error('planted');
    }, 0);
  });
  await page.waitForFunction(() => globalThis.tidysump.core.state === 'starting', { polling });
  await done(page, 1);
  await page.waitForFunction(() => globalThis.tidysump.core.state === 'ready', { polling });
  assert.deepEqual(await staysAmiss(page, alerts), [], 'nobody waited: nothing to tell');
  assert.deepEqual(
    (await stored(page, 'events')).map(({ kind, step }) => [kind, step]),
    [['done', 'identify']],
  );
});

test('the core is silently gone in mid-job: the tap is answered all the same, once', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  await page.workers()[0].evaluate(() => self.close());
  await tapDone(page);
  await untilStep(page, 2);
  await done(page, 2);
  assert.deepEqual((await stored(page, 'events')).map(({ step }) => step).sort(), [
    'identify',
    'lay-out',
  ]);
});

test('hostile text in names and notes is only text', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await plant(page, ...hostileJob());
  const addresses = {
    bikes: '#/bikes',
    step: '#/job/hostile-job/step/tighten-drain',
    steps: '#/job/hostile-job/steps',
    list: '#/record',
    record: '#/record/hostile-job',
    sheet: '#/sheet/hostile-job',
  };
  const noted = ['step', 'record', 'sheet'];
  const found = { wide: [], images: 0, turned: [] };
  for (const [name, address] of Object.entries(addresses)) {
    await goTo(page, address);
    if (name !== 'steps') await untilSeen(page, markup);
    if (noted.includes(name)) await untilSeen(page, wordId);
    found.wide.push(...(await stickingOut(page)).map((what) => `${name}: ${what}`));
    found.turned.push(...(await figuresTurned(page)));
    found.images += await page.evaluate(() => document.images.length);
  }
  assert.deepEqual(found, { wide: [], images: 0, turned: [] });
  assert.equal(await page.evaluate(() => globalThis.ran), undefined);
  assert.deepEqual(complaints, []);
});

test('two tabs on one job: both add, and after a reload both see everything', async (t) => {
  const { page, browser, url } = await openSite(t);
  await untilState(page, 'ready');
  await plant(page, ...openJob);
  const other = await browser.newPage();
  await other.goto(url);
  for (const tab of [page, other]) {
    await tab.bringToFront();
    await goTo(tab, '#/job/open-job');
    await untilStep(tab, 3);
  }
  await page.bringToFront();
  await done(page, 3);
  await other.bringToFront();
  await goTo(other, '#/job/open-job/step/free-filler');
  const { steps: planned } = await planOf(other, openJob[0].card);
  const number = planned.findIndex(({ id }) => id === 'free-filler') + 1;
  await untilStep(other, number);
  await done(other, number);
  for (const tab of [page, other]) {
    await tab.bringToFront();
    await tab.goto(`${url}#/bikes`);
    await tab.reload();
    await untilSeen(tab, words('bikes.progress', { done: 4, count: planned.length }));
    await goTo(tab, '#/job/open-job/steps');
    assert.deepEqual(await stepsDone(tab), [1, 2, 3, number]);
  }
});

/** Numbers of the steps that the list of all steps shows as done. */
const stepsDone = (page) =>
  page.evaluate((done) => {
    const marks = [...document.querySelectorAll('[role=img]')];
    return marks.flatMap((mark, i) => (mark.ariaLabel === done ? [i + 1] : []));
  }, words('job.is-done'));
