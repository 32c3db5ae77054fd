// A page over plain HTTP from another machine: a browser gives it much less.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { chooseText } from './choose-file.js';
import { done, goTo, startJob, stored, untilStep } from './job-page.js';
import { openBrowser, startServer } from './launch.js';
import { seen, tap, tapText, untilSeen } from './person.js';
import { watch } from './watch.js';
import { sampleBackup, words } from './words.js';

const name = 'workshop.example';

test('an address that cannot keep the app says so in one sentence, and a job goes on all the same', async (t) => {
  const server = await startServer(t);
  const browser = await openBrowser(t, undefined, [`--host-resolver-rules=MAP ${name} 127.0.0.1`]);
  const page = await browser.newPage();
  const complaints = await watch(page);
  const url = new URL(server.url);
  url.hostname = name;
  await page.goto(url.href);
  const given = await page.evaluate(() => [
    isSecureContext,
    'serviceWorker' in navigator,
    'randomUUID' in crypto,
    'subtle' in crypto,
    'storage' in navigator,
  ]);
  assert.deepEqual(given, Array(5).fill(false), 'what is tested here');
  await untilSeen(page, words('page.insecure'));
  assert.doesNotMatch(await seen(page), new RegExp(words('app.offline')));
  await startJob(page, 'Corda');
  await done(page, 1);
  await page.reload();
  await untilStep(page, 2);
  const [{ id }] = await stored(page, 'jobs');
  assert.match(id, /^[0-9a-f-]{36}$/);
  await goTo(page, '#/bikes');
  await untilSeen(page, words('bikes.resume'));
  await tapText(page, 'Corda');
  await untilStep(page, 2);
  await goTo(page, '#/settings');
  await untilSeen(page, words('settings.offline.insecure'));
  await goTo(page, '#/keep');
  await tap(page, words('keep.make'));
  await untilSeen(page, words('keep.insecure'));
  await page.waitForSelector('#rescue:not([hidden])');
  await chooseText(page, '#backup-file', 'backup.txt', sampleBackup);
  await untilSeen(page, words('restore.insecure'));
  // A header that such an address can't make use of.
  assert.deepEqual(
    complaints.filter((text) => !text.startsWith('The Cross-Origin-Opener-Policy header')),
    [],
  );
});
