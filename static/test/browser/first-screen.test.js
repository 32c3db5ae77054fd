// The first screen answers first: many bikes at once, a search that takes what people type,
// and the figure itself where that is asked for.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo, plantIn, startJob, untilReady } from './job-page.js';
import { staysAmiss } from './layout.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { chooseFrom, heading, seen, tap, type, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const model = `${card.make} ${card.model}`;

/** How many rows of the list are seen as a whole, above what lies over it at the bottom. */
const wholeRows = (page) =>
  page.evaluate(() => {
    const lying = [...document.querySelectorAll('.actions, .tabs')];
    const bottom = Math.min(...lying.map((bar) => bar.getBoundingClientRect().top));
    const rows = [...document.querySelectorAll('.bikes li')];
    return rows.filter((row) => {
      const box = row.getBoundingClientRect();
      return box.top >= 0 && box.bottom <= bottom;
    }).length;
  });

/** Waits until so many rows are seen as a whole; how high the bars are is measured a moment later. */
const untilRowsWhole = async (page, least) => {
  const tooFew = async () => [await wholeRows(page)].filter((rows) => rows < least);
  assert.deepEqual(await staysAmiss(page, tooFew), [], `fewer than ${least} rows`);
};

const signed = (page) =>
  page.waitForFunction(() => document.querySelector('.bikes svg.outline'), { polling });

test('a fresh phone shows seven bikes as a whole, and the way to help under the thumb', async (t) => {
  const { page } = await openSite(t);
  await signed(page);
  await untilRowsWhole(page, 7);
  const way = await page.$eval('.wrong a', (a) => {
    const { top, height } = a.getBoundingClientRect();
    return { top: top / innerHeight, height, leads: a.hash };
  });
  assert.ok(way.top > 2 / 3 && way.height >= 56, JSON.stringify(way));
  assert.equal(way.leads, '#/trouble');
  const rows = await page.evaluate(
    () => new Set([...document.querySelectorAll('.find > *')].map((e) => e.offsetTop)).size,
  );
  assert.equal(rows, 2, 'search and filter stand in one row, the ways to a new bike in the next');
});

test('with two open jobs four bikes are seen, and the jobs say where they are', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, model);
  await untilReady(page);
  await goTo(page, '#/bikes');
  await startJob(page, 'Marrowick Pip 130');
  await untilReady(page);
  await goTo(page, '#/bikes');
  await untilSeen(page, `${words('bikes.resume')}: ${model}`);
  await untilSeen(page, words('bikes.begun', { date: '' }).trim());
  await signed(page);
  assert.equal(await page.$$eval('.resume', (jobs) => jobs.length), 2);
  await untilRowsWhole(page, 4);
});

test('a job on the first screen counts down the time that is left', async (t) => {
  const { page } = await openSite(t);
  const until = new Date(Date.now() + 200_000).toISOString();
  const timers = [{ step: 'run-out', what: 'run-out', until }];
  const summary = { phase: 'open', stage: 'drain', done: 3, steps: 38, timers };
  const job = { id: 'j', bike: card.id, name: model, started: '2026-11-29T10:00:00.000Z' };
  await plantIn(page, 'log', { ...job, summary });
  await page.reload();
  await untilSeen(page, words('stage.drain'));
  const left = await page.$eval('.resume [role=timer]', (e) => e.textContent);
  assert.match(left, /^[0-3]:\d\d$/);
});

test('a figure that is asked for stands above the list, as the plan has it', async (t) => {
  const { page } = await openSite(t);
  await untilSeen(page, model);
  const drainPlug = words('purpose.drain-plug').replace(/^./, (letter) => letter.toUpperCase());
  const drain = card.bolts.find(({ purpose }) => purpose === 'drain-plug');
  for (const typed of ['corda drain', 'what is the drain torque of the Corda?', 'crda dran']) {
    await type(page, words('bikes.search'), typed);
    await untilSeen(page, drainPlug);
    const answer = await page.$eval('.answers', (e) => e.innerText);
    await untilSeen(page, `${drain.torque.value} N·m`);
    assert.ok(answer.includes(model), typed);
    await type(page, words('bikes.search'), 'no such bike');
    await page.waitForFunction(() => !document.querySelector('.asked'), { polling });
  }
  await type(page, words('bikes.search'), 'drain');
  await untilSeen(page, words('asked.which'));
  await type(page, words('bikes.search'), 'corda drain');
  await untilSeen(page, drainPlug);
  await page.keyboard.press('Enter');
  await untilSeen(page, words('plan.start'));
  assert.equal(await heading(page), model);
});

test('grade, volume and a slip of a letter find a bike, and Enter opens the only one', async (t) => {
  const { page } = await openSite(t);
  await untilSeen(page, model);
  const rows = () => page.$$eval('.bikes strong', (all) => all.map((e) => e.innerText.trim()));
  const untilRows = (count) =>
    page.waitForFunction(
      (n) => document.querySelectorAll('.bikes li').length === n,
      { polling },
      count,
    );
  await signed(page); // what it reads more of is there
  const all = (await rows()).length;
  const [engine] = card.circuits;
  await type(page, words('bikes.search'), `${engine.withFilter.value * 1000} ml`);
  await page.waitForFunction(
    (n) => document.querySelectorAll('.bikes li').length < n,
    { polling },
    all,
  );
  await untilSeen(page, model);
  await type(page, words('bikes.search'), 'no such bike');
  await untilRows(0);
  await type(page, words('bikes.search'), 'crda');
  await untilRows(1);
  assert.deepEqual(await rows(), [model]);
  assert.ok((await seen(page)).includes(words('bikes.near', { count: 1 })));
  await page.keyboard.press('Enter');
  await untilSeen(page, words('plan.start'));
  assert.equal(await heading(page), model);
});

test('the filter shows a part of the list, and says so', async (t) => {
  const { page } = await openSite(t);
  await signed(page);
  await tap(page, words('bikes.filter'));
  await chooseFrom(page, '#filter', 'layout.scooter');
  await page.waitForFunction(() => document.querySelectorAll('.bikes li').length === 1, {
    polling,
  });
  assert.ok(await page.$(`[aria-label="${words('bikes.filter.on')}"]`));
  await chooseFrom(page, '#filter', 'mine');
  await page.waitForFunction(() => !document.querySelector('.bikes li'), { polling });
});
