// Two jobs at once: the strip of the other one on every screen, its timer that ends meanwhile,
// and the way back to where one was.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { setTimeout as pause } from 'node:timers/promises';
import { clockAhead, putBeforeEnd } from './clock.js';
import { tapAt } from './finger.js';
import { goTo, openStep, phone, startJob, stored } from './job-page.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import { patience } from './patience.js';
import { heading, tap, untilSeen } from './person.js';
import { voices } from './voices.js';
import { pieces, sampleCard, words } from './words.js';

const nameOf = ({ make, model }) => `${make} ${model}`;
const [first, second] = ['tessaly-corda-570', 'marrowick-lirro-140'].map(sampleCard);
const draining = words('step.run-out', { of: '@role.engine' });
const start = words('timer.start', { length: '5\u00a0min' });

const ready = async (page) => {
  await page.evaluateOnNewDocument(voices);
  await page.evaluateOnNewDocument(clockAhead, 0);
};

/** The lines of the strip. */
const lines = (page) =>
  page.$$eval('.others a', (all) =>
    all.map((a) => a.innerText.replace(/\s+/g, ' ').replace(/[\u2066-\u2069]/g, '')),
  );

/** Waits until the strip has a line with that text. */
const untilLine = (page, text) =>
  page.waitForFunction(
    (want) =>
      [...document.querySelectorAll('.others a')].some((a) =>
        a.innerText.replace(/\s+/g, ' ').includes(want),
      ),
    { polling, timeout: patience() },
    text,
  );

/** A phone on which the oil of the first bike runs out, while one works on the second. */
async function twoJobs(t) {
  const site = await openSite(t, ready);
  const { page } = site;
  await untilState(page, 'ready');
  await startJob(page, nameOf(first));
  await openStep(page, 'run-out');
  await tap(page, start);
  await untilSeen(page, words('timer.stop'));
  await goTo(page, '#/bikes');
  await startJob(page, nameOf(second));
  await untilLine(page, nameOf(first));
  return site;
}

const over = words('timer.over');
const isOver = words('timer.over.named', {
  name: words('timer.of-bike', { name: '@timer.drain', bike: nameOf(first) }),
}).replace(/[\u2066-\u2069]/g, '');

test('the timer of one bike ends while one works on the other, rings, and is told until it is seen', async (t) => {
  const { page, complaints } = await twoJobs(t);
  const [line] = await lines(page);
  assert.match(line, /^.* (Ready|Drain|Warm) [0-5]:\d\d$/, 'bike, stage, time left');
  await putBeforeEnd(page, 0);
  await untilSeen(page, isOver);
  await page.waitForFunction(() => globalThis.phone.shakes, { polling, timeout: patience() });
  assert.ok((await phone(page, 'tones')) >= 3);
  await untilLine(page, over);
  for (const screen of ['#/bench', '#/bikes', '#/settings', '#/record']) {
    await goTo(page, screen);
    await untilLine(page, over);
  }
  assert.equal(await phone(page, 'shakes'), 1, 'it rings once');

  // One tap leads back to the step that one left, and the other job is in the strip now.
  await tapAt(page, '.others a[data-over=true]');
  await untilSeen(page, words('timer.seen'));
  assert.equal(await heading(page), draining);
  assert.deepEqual(
    (await lines(page)).map((text) => text.startsWith(nameOf(second))),
    [true],
  );
  await tap(page, words('timer.seen'));
  await goTo(page, '#/record');
  await untilLine(page, words('others.more', { count: 1 })); // both are open
  await untilLine(page, nameOf(second)); // no timer is left: the job begun last stands first
  assert.ok(!(await lines(page)).some((text) => text.includes(over)), 'it was seen');
  assert.deepEqual(complaints, []);
});

test('one tap changes the bike, and comes back to the step that was left', async (t) => {
  const { page } = await twoJobs(t);
  const jobs = await stored(page, 'jobs');
  const [one, two] = [first, second].map(({ id }) => jobs.find((job) => job.card.id === id).id);
  await goTo(page, `#/job/${two}/step/lay-out`);
  const left = await heading(page);
  await untilLine(page, nameOf(first));
  await tapAt(page, '.others a');
  await untilSeen(page, words('timer.stop'));
  assert.equal(await heading(page), draining);
  await untilLine(page, nameOf(second));
  await tapAt(page, '.others a');
  await page.waitForFunction(
    (step) => location.hash.endsWith(step),
    { polling, timeout: patience() },
    `${two}/step/lay-out`,
  );
  await page.waitForFunction(
    (text) => document.querySelector('h1').textContent.replace(/\s+/g, ' ').trim() === text,
    { polling, timeout: patience() },
    left,
  );
  // A view of the job is a place too.
  await goTo(page, `#/job/${one}/page`);
  await goTo(page, '#/bench');
  const there = await page.$$eval('.others a', (all) => all.map(({ hash }) => hash));
  assert.deepEqual(there, [`#/job/${one}/page`, '#/bikes']);
});

test('a phone that was off in between still knows the step that was left', async (t) => {
  const { page } = await twoJobs(t);
  const jobs = await stored(page, 'jobs');
  const one = jobs.find(({ card }) => card.id === first.id).id;
  const two = jobs.find(({ card }) => card.id === second.id).id;
  await goTo(page, `#/job/${two}/step/lay-out`);
  await goTo(page, `#/job/${one}/step/run-out`);
  const kept = (setting) => setting?.[two]?.at(-1) === 'lay-out';
  while (!(await stored(page, 'settings')).some(kept)) await pause(polling);
  await page.reload();
  await untilLine(page, nameOf(second));
  assert.deepEqual(await page.$$eval('.others a', (all) => all.map(({ hash }) => hash)), [
    `#/job/${two}/step/lay-out`,
  ]);
});

test('with two windows it rings in one of them, and what is seen in one is seen in both', async (t) => {
  const { page, browser, url } = await twoJobs(t);
  const other = await browser.newPage();
  await ready(other);
  await other.goto(`${url}#/record`);
  await other.bringToFront();
  await other.mouse.click(5, 5); // a tap allows it to ring
  await untilLine(other, nameOf(first));
  for (const window of [page, other]) await putBeforeEnd(window, 0);
  for (const window of [page, other]) {
    await window.bringToFront();
    await untilLine(window, over);
    await untilSeen(window, isOver);
  }
  const rung = await Promise.all([page, other].map((window) => phone(window, 'shakes')));
  assert.equal(rung[0] + rung[1], 1, `${rung}`);
  await tapAt(other, '.others a[data-over=true]');
  await tap(other, words('timer.seen'));
  await page.waitForFunction(() => !document.querySelector('.others [data-over=true]'), {
    polling,
    timeout: patience(),
  });
});

test('of many open jobs the most urgent stands in the strip, and how many more there are', async (t) => {
  const { page } = await twoJobs(t);
  for (const id of ['marrowick-pip-130', 'skarvald-torrek-440', 'tessaly-corda-570']) {
    await goTo(page, '#/bikes');
    await goTo(page, `#/bike/${id}`);
    await tap(page, words('plan.start'));
    await untilSeen(page, new RegExp(words('job.step', { number: 1, steps: '\\d+' })));
  }
  const all = await lines(page);
  assert.equal(all.length, 2);
  assert.ok(all[0].startsWith(nameOf(first)), 'what ends first stands first');
  assert.equal(all[1], words('others.more', { count: 3 }));
  const rows = new Set(
    await page.$$eval('.others a', (list) =>
      list.map((a) => Math.round(a.getBoundingClientRect().top)),
    ),
  );
  assert.equal(rows.size, 1, 'it takes one row');
  await page.setViewport({ width: 360, height: 740 });
  const high = await page.$$eval('.others a', (list) => list.map((a) => a.offsetHeight));
  assert.ok(Math.max(...high) <= 56, `a thin one: ${high}`);
  // Of two with one name the day and time at which they were begun stand beside.
  assert.doesNotMatch(all[0], new RegExp(pieces('stage.drain')[0]));
});
