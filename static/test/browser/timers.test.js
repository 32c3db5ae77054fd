// Timers: through a dead phone, on every screen, by keyboard.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { clockAhead, putBeforeEnd, putOn } from './clock.js';
import { tapAt } from './finger.js';
import {
  goTo,
  openStep,
  phone,
  startJob,
  stored,
  tapDone,
  untilPast,
  untilReady,
} from './job-page.js';
import { temporaryFolder } from './launch.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { heading, tap, untilSeen } from './person.js';
import { killBrowser, startAgain, visitOnce } from './restart.js';
import { voices } from './voices.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;
const minutes = 60_000; // ms
const length = '5\u00a0min'; // the draining
const draining = words('step.run-out', { of: '@role.engine' });
const start = words('timer.start', { length });

// What stands on the screen is compared with plain spaces.
const plain = (text) => text.replaceAll('\u00a0', ' ');

const digits = (page) =>
  page.$eval('.digits', (element) => {
    const [min, s] = element.textContent.split(':').map(Number);
    return min * 60 + s;
  });

/** Starts the timer of the draining. */
async function startDraining(page) {
  await openStep(page, 'run-out');
  assert.equal(await heading(page), draining);
  await tap(page, start);
  await untilSeen(page, words('timer.stop'));
}

const timerEvents = async (page) =>
  (await stored(page, 'events')).filter(({ kind }) => kind === 'timer');

test('a timer outlives the killed browser, and says how long ago it ended', async (t) => {
  const profile = await temporaryFolder(t);
  const url = await visitOnce(t, profile);
  const first = await startAgain(t, profile, url);
  await startJob(first.page, bike);
  await startDraining(first.page);
  const [event] = await timerEvents(first.page);
  assert.equal(event.what, 'drain');
  const runs = Date.parse(event.until) - Date.parse(event.time);
  assert.ok(Math.abs(runs - 5 * minutes) < minutes / 2, `${runs} ms`);
  await killBrowser(first.browser);

  const second = await startAgain(t, profile, url);
  await second.page.evaluateOnNewDocument(clockAhead, minutes);
  await second.page.reload();
  await openStep(second.page, 'first-start');
  await second.page.waitForSelector('.others .digits');
  assert.ok((await digits(second.page)) <= 240, 'a minute has passed');
  await untilSeen(second.page, words('timer.drain'));
  await tapAt(second.page, '.others a');
  await untilSeen(second.page, words('timer.stop'));
  assert.equal(await heading(second.page), draining);
  assert.deepEqual([...first.complaints, ...second.complaints], []);
  await killBrowser(second.browser);

  const third = await startAgain(t, profile, url);
  await third.page.evaluateOnNewDocument(clockAhead, 17 * minutes);
  await third.page.reload();
  await openStep(third.page, 'run-out');
  await untilSeen(third.page, words('timer.over'));
  await untilSeen(third.page, /(1[2-9]|[2-5]\d) min ago/); // and as long as all this took
  await tap(third.page, words('timer.seen'));
  await untilSeen(third.page, plain(start));
  assert.deepEqual(third.complaints, []);
});

const ready = async (page) => {
  await page.evaluateOnNewDocument(voices);
  await page.evaluateOnNewDocument(clockAhead, 0);
};

test('it rings once at its end, on any screen, and is there until it is answered', async (t) => {
  const { page, complaints } = await openSite(t, ready);
  await startJob(page, bike);
  await startDraining(page);
  await goTo(page, '#/bench/run-out');
  await putBeforeEnd(page, 59_000);
  await untilSeen(page, words('timer.minute', { name: '@timer.drain' }));
  assert.equal(await phone(page, 'shakes'), 0);
  await putBeforeEnd(page, 0);
  await page.waitForFunction(() => globalThis.phone.shakes, { polling });
  await untilSeen(page, words('timer.over'));
  assert.ok((await phone(page, 'tones')) >= 3, 'a tone that the tap allowed');
  await openStep(page, 'first-start');
  await tapAt(page, '.others a[data-over=true]');
  await untilSeen(page, words('timer.again', { length: '5 min' }));
  await putOn(page, 10 * minutes);
  await untilSeen(page, /1\d min ago/);
  assert.equal(await phone(page, 'shakes'), 1);

  // Started again it replaces the one before; stopped, neither comes back.
  await tap(page, words('timer.again', { length }));
  await untilSeen(page, words('timer.stop'));
  assert.ok((await digits(page)) > 200);
  await tap(page, words('timer.stop'));
  await untilSeen(page, plain(start));
  assert.equal((await timerEvents(page)).length, 2, 'what happened stays in the record');

  // The step done ends it too, and undo brings it back.
  await tap(page, start);
  await untilSeen(page, words('timer.stop'));
  await tapDone(page);
  await untilPast(page, 'run-out');
  await page.waitForFunction(() => !document.querySelector('.others'), { polling });
  await tap(page, words('job.undo'));
  await untilSeen(page, words('timer.stop'));
  assert.deepEqual(complaints, []);
});

test('while a timer counts, nothing that a finger may lie on is drawn anew', async (t) => {
  const { page } = await openSite(t, ready);
  await startJob(page, bike);
  for (const step of ['run-out', 'first-start']) {
    if (step === 'run-out') await startDraining(page);
    else await openStep(page, step);
    await untilReady(page);
    await page.waitForSelector('.digits');
    const under = await page.evaluateHandle(() => [...document.querySelectorAll('a, button')]);
    for (let seconds = 2; seconds; seconds--) {
      const before = await page.$eval('.digits', ({ textContent }) => textContent);
      await page.waitForFunction(
        (then) => document.querySelector('.digits').textContent !== then,
        { polling, timeout: patience() },
        before,
      );
    }
    const gone = await under.evaluate((all) =>
      all.filter(({ isConnected }) => !isConnected).map(({ outerHTML }) => outerHTML),
    );
    assert.deepEqual(gone, []);
  }
});

test('by keyboard alone a timer is started and stopped', async (t) => {
  const { page } = await openSite(t, ready);
  await startJob(page, bike);
  await openStep(page, 'leak-look');
  for (const button of [start, words('timer.stop')]) {
    const focused = () => page.evaluate(() => document.activeElement.innerText?.trim() ?? '');
    for (let tabs = 0; !(await focused()).endsWith(button); tabs++) {
      assert.ok(tabs < 40, `Tab comes to "${button}"`);
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await untilSeen(page, button === start ? words('timer.stop') : plain(start));
    await page.evaluate(() => document.querySelector('h1').focus());
  }
});
