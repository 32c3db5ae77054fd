// What was taken back can be taken back too, and what two windows say at once is said once.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { comesTo } from './comes-to.js';
import { done, goTo, planOf, startJob, stored, untilStep } from './job-page.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { seen, tap, type, typed, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

const kinds = async (page) => (await stored(page, 'events')).map(({ kind }) => kind).sort();
const offersRedo = (page) =>
  page.evaluate(
    (name) => [...document.querySelectorAll('button')].some((b) => b.innerText.trim() === name),
    words('job.redo'),
  );

test('an undo is undone by Redo, which is there only right after it', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  await done(page, 1);
  await done(page, 2);
  assert.equal(await offersRedo(page), false, 'nothing was taken back');
  await tap(page, words('job.undo'));
  await untilStep(page, 2);
  await untilSeen(page, words('job.undone'));
  await tap(page, words('job.redo'));
  await untilSeen(page, words('job.redone'));
  await untilStep(page, 2);
  assert.ok((await seen(page)).includes(words('job.next')), 'the step is done again');
  assert.equal(await offersRedo(page), false);
  assert.deepEqual(await kinds(page), ['done', 'done', 'undo', 'undo']);

  await tap(page, words('job.undo'));
  await untilSeen(page, words('job.undone'));
  await tap(page, words('job.undo'));
  await untilStep(page, 1);
  await done(page, 1);
  assert.equal(await offersRedo(page), false, 'something else came after the undo');
  assert.deepEqual(complaints, []);
});

test('two windows that say of a step at once that it is done say so once', async (t) => {
  const { page, browser, url } = await openSite(t);
  await startJob(page, bike);
  const [{ id }] = await stored(page, 'jobs');
  const other = await browser.newPage();
  await other.goto(url);
  await goTo(other, `#/job/${id}`);
  await untilStep(other, 1);
  // A window that is not seen is told of nothing before it adds something.
  const press = (name) =>
    [...document.querySelectorAll('button')].find((b) => b.innerText.trim() === name).click();
  await Promise.all([page, other].map((tab) => tab.evaluate(press, words('job.done'))));
  for (const tab of [page, other]) {
    await tab.bringToFront();
    await untilStep(tab, 2);
  }
  const steps = (await planOf(page, card)).steps.length;
  await goTo(page, '#/bikes');
  await untilSeen(page, words('bikes.progress', { done: 1, count: steps }));
  await other.bringToFront();
  await tap(other, words('job.undo'));
  await untilStep(other, 1);
  assert.ok((await seen(other)).includes(words('job.done')), 'one undo takes it back');
});

test('what is typed while the same field is being kept stays in it', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  await type(page, words('ask.odometer'), '12 400');
  await page.evaluate(() => {
    const field = document.querySelector('.asks input');
    field.form.requestSubmit();
    field.value = '12 400 miles';
    field.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  await page.waitForFunction(() => document.querySelector('.asks .kept'), { polling });
  await comesTo(() => typed(page, words('ask.odometer')), '12 400 miles');
  await untilSeen(page, words('draft.written'));
});
