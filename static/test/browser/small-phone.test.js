// A phone with 1 GB of memory: what Chromium does on one, with little room for scripts.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';
import { backUp, restoreFrom } from './backup-page.js';
import { halves, withExif } from './exif.js';
import { held } from './held.js';
import { startJob } from './job-page.js';
import { doneTo } from './job-walk.js';
import { launchChromium, openBrowser, startServer } from './launch.js';
import { phone } from './open-site.js';
import { askCore, untilState } from './page.js';
import { coloursOf, keepPicture, pictures } from './photos-page.js';
import { sampleCard } from './words.js';
import { watch } from './watch.js';

const small = ['--enable-low-end-device-mode', '--js-flags=--max-old-space-size=128'];
const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;
const camera = [4000, 3000]; // px: 12 megapixels

/** A picture as a camera of 12 megapixels writes it, lying on its side; a browser of its own draws it. */
async function cameraPicture() {
  const browser = await launchChromium();
  try {
    return withExif(await halves(await browser.newPage(), ...camera));
  } finally {
    await browser.close();
  }
}

/** The first visit of such a phone: {page, tell, complaints}; a crash is a complaint, `tell` reports what was held. */
async function visit(t, url) {
  const browser = await openBrowser(t, undefined, small);
  const page = await browser.newPage();
  await page.setViewport({ ...phone, isMobile: true, hasTouch: true, deviceScaleFactor: 2 });
  const complaints = await watch(page);
  page.on('error', (error) => complaints.push(String(error)));
  await page.goto(url);
  await untilState(page, 'ready');
  const room = await page.evaluate(() => performance.memory.jsHeapSizeLimit);
  assert.ok(room < 200e6, `what is tested here: scripts have ${room} bytes`);
  const tell = async (what) =>
    t.diagnostic(`${what}: ${(await mostHeld(browser)).toFixed(0)} MB at most in a page`);
  await tell('first visit');
  return { page, tell, complaints };
}

/** The most that a process of the pages of that browser ever held, in MB. */
async function mostHeld(browser) {
  const devtools = await browser.target().createCDPSession();
  const { processInfo } = await devtools.send('SystemInfo.getProcessInfo');
  await devtools.detach();
  const pages = processInfo.filter(({ type }) => type === 'renderer');
  const most = pages.map(async ({ id }) => {
    const status = await readFile(`/proc/${id}/status`, 'utf8').catch(() => ''); // it has ended
    return Number(status.match(/^VmHWM:\s+(\d+) kB$/m)?.[1] ?? 0) / 1000;
  });
  return Math.max(...(await Promise.all(most)));
}

test('a phone with 1 GB of memory: ten steps, three photos of 12 megapixels, a backup that another such phone restores', async (t) => {
  const { url } = await startServer(t);
  const picture = await cameraPicture();
  const one = await visit(t, url);
  await startJob(one.page, bike);
  await doneTo(one.page, 1, 11);
  await one.tell('ten steps');
  for (const what of ['plug', 'pan', 'filter']) {
    await keepPicture(t, one.page, picture, what);
    await one.tell('a photo');
  }
  const kept = await pictures(one.page);
  assert.equal(kept.length, 3);
  for (const { what, base64, width, height } of kept) {
    assert.deepEqual([width, height], [1200, 1600], what);
    const [top, bottom] = await coloursOf(one.page, base64, [
      [0.5, 0.2],
      [0.5, 0.8],
    ]);
    assert.ok(top[0] > 200 && top[2] < 60, `${what}, red on top: ${top}`);
    assert.ok(bottom[2] > 200 && bottom[0] < 60, `${what}, blue below: ${bottom}`);
  }
  const { path } = await backUp(t, one.page);
  await one.tell('backup');

  const two = await visit(t, url);
  await restoreFrom(two.page, path);
  await two.tell('restore');
  const want = await held(one.page);
  assert.equal(want.events.length, 13);
  assert.deepEqual(await held(two.page), want);

  for (const { page, complaints } of [one, two]) {
    assert.deepEqual(complaints, []);
    assert.equal(await askCore(page), 'unknown-op', 'the core runs');
  }
});
