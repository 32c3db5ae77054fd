// First aid: one tap from each step of a job and from the problems, with the server
// stopped, and each card whole on a phone's screen.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { kinds } from '../../app/aid/kinds.js';
import { goTo, startJob, stored, untilStep } from './job-page.js';
import { textSize } from './layout.js';
import { openWithoutServer, phone } from './open-site.js';
import { polling } from './page.js';
import { heading, tap, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');

/** Where the links to the cards lead, by what they are called. */
const ways = (page) =>
  page.evaluate((title) => {
    const nav = [...document.querySelectorAll('nav')].find((n) => n.innerText.includes(title));
    return Object.fromEntries(
      [...(nav?.querySelectorAll('a') ?? [])].map((a) => [a.innerText, a.hash]),
    );
  }, words('aid.title'));

/** Where they must lead. */
const wanted = (from) =>
  Object.fromEntries(
    Object.keys(kinds).map((kind) => [
      words(`aid.${kind}`),
      `#/aid/${kind}${from ? `?${new URLSearchParams(from)}` : ''}`,
    ]),
  );

test('every card is one tap from every step of a job, and from there back', async (t) => {
  const page = await openWithoutServer(t);
  await startJob(page, `${card.make} ${card.model}`);
  const [{ id: job }] = await stored(page, 'jobs');
  await goTo(page, `#/job/${job}/steps`);
  const steps = await page.$$eval('a[href*="/step/"]', (all) => all.map(({ hash }) => hash));
  assert.ok(steps.length > 20, `the job has ${steps.length} steps`);
  for (const at of steps) {
    await goTo(page, at);
    await page.waitForFunction(
      (title, hash) =>
        document.querySelector('h1') &&
        document.body.innerText.includes(title) &&
        location.hash === hash,
      { polling },
      words('aid.title'),
      at,
    );
    const step = decodeURIComponent(at.split('/').at(-1));
    assert.deepEqual(await ways(page), wanted({ job, step }), step);
  }
  await goTo(page, `#/job/${job}/step/identify`);
  await untilStep(page, 1);
  await tap(page, words('aid.burn'), 'link');
  await untilSeen(page, words('aid.burn.cool'));
  assert.equal(await heading(page), words('aid-title.burn'));
  await tap(page, words('aid.eye'), 'link');
  await untilSeen(page, words('aid.eye.rinse'));
  await page.reload();
  await untilSeen(page, words('aid.eye.rinse'));
  await tap(page, words('aid.back'), 'link');
  await untilStep(page, 1);
});

test('every card is one tap from the problems, and stands whole on the screen', async (t) => {
  const page = await openWithoutServer(t);
  await goTo(page, '#/trouble');
  await untilSeen(page, words('aid.title'));
  assert.deepEqual(await ways(page), wanted());
  assert.deepEqual(await broken(page), [], 'among the problems');
  await goTo(page, '#/trouble/burnt');
  await untilSeen(page, words('aid.title'));
  assert.deepEqual(await broken(page), [], 'at the problem of who is hurt');
  for (const kind of Object.keys(kinds)) {
    await goTo(page, '#/trouble');
    await tap(page, words(`aid.${kind}`), 'link');
    await untilSeen(page, words(`aid-source.${kind}`));
    const [top, bottom, edge] = await edges(page);
    assert.ok(
      top >= 0 && bottom <= edge,
      `${kind}: from ${top} to ${bottom}, the bar is at ${edge}`,
    );
    await textSize(page, 2);
    const [larger, , , first] = await edges(page);
    await textSize(page, 1);
    assert.ok(
      larger >= 0 && first <= phone.height,
      `${kind}, text of 200 %: the first line ends at ${first}`,
    );
  }
});

/** The links to the cards whose name doesn't stand on one line. */
const broken = (page) =>
  page.evaluate(() => {
    const lines = (element) => {
      const range = document.createRange();
      range.selectNodeContents(element);
      return new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size;
    };
    return [...document.querySelectorAll('a[href^="#/aid/"]')]
      .filter((link) => lines(link) > 1)
      .map(({ innerText }) => innerText);
  });

/** Where the card begins and ends, where the bar below begins, and where the first line ends. */
const edges = (page) =>
  page.evaluate(() => {
    scrollTo(0, 0);
    const of = (selector) => document.querySelector(selector).getBoundingClientRect();
    return [of('h1').top, of('article').bottom, of('nav[aria-label]').top, of('article li').bottom];
  });
