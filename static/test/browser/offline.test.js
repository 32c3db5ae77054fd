import assert from 'node:assert/strict';
import { test } from 'node:test';
import { exportEditions } from './editions.js';
import { startFolderHost } from './folder-host.js';
import { openBrowser, startServer, temporaryFolder } from './launch.js';
import { askCore, polling, stateOf, untilState } from './page.js';

/** The URLs of all files that the page has loaded. */
const loadedBy = (page) =>
  page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));

const scriptOf = (page) => page.evaluate(() => document.querySelector('script[src]').src);

const cachesOf = (page) => page.evaluate(() => caches.keys());

test('the second start needs no network and no running server', async (t) => {
  const profile = await temporaryFolder(t);
  const server = await startServer(t);
  const first = await openBrowser(t, profile);
  const page = await first.newPage();
  await page.goto(server.url);
  await untilState(page, 'ready');
  const { version } = await stateOf(page);
  await first.close();
  assert.equal(await server.stop(), 0);
  await assert.rejects(fetch(server.url), 'the server is gone');

  const again = await (await openBrowser(t, profile)).newPage();
  await again.goto(`${server.url}?from=icon`);
  await untilState(again, 'ready');
  assert.equal((await stateOf(again)).version, version);
  assert.equal(await askCore(again), 'unknown-op');
});

test('the first visit goes offline without a reload, even if the core must restart', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  let loads = 0;
  page.on('load', () => loads++);
  await page.goto(server.url);
  await page.waitForFunction(() => navigator.serviceWorker.controller, { polling });
  assert.equal(await server.stop(), 0);
  assert.equal(await askCore(page), 'unknown-op');
  const [worker] = page.workers();
  await worker.evaluate(() => delete globalThis.tidysumpCall);
  assert.equal(await askCore(page), 'unknown-op');
  assert.notEqual(page.workers()[0], worker, 'a new worker was started');
  assert.equal(loads, 1);
  assert.equal((await stateOf(page)).updatedElsewhere, false);
});

test('an update waits, takes over when asked, and leaves other tabs alone', async (t) => {
  const [now, next] = await exportEditions(t);
  const host = await startFolderHost(t, now);
  const browser = await openBrowser(t);
  const [page, other] = [await browser.newPage(), await browser.newPage()];
  for (const tab of [page, other]) {
    await tab.goto(host.url);
    await untilState(tab, 'ready');
  }
  const { version } = await stateOf(page);
  const script = await scriptOf(page);

  host.folder = next;
  await page.evaluate(() => globalThis.tidysump.offline.check());
  await untilState(page, 'waiting');
  await untilState(other, 'waiting');
  assert.equal((await fetch(script)).status, 404, 'the host has the old script no more');
  await page.reload();
  await untilState(page, 'waiting');
  assert.equal((await stateOf(page)).version, version, 'a reload stays with the old version');
  assert.equal(await askCore(page), 'unknown-op');

  await other.evaluate(() => (globalThis.untouched = true));
  await Promise.all([
    page.waitForNavigation(),
    page.evaluate(() => globalThis.tidysump.offline.takeOver()),
  ]);
  await page.waitForFunction(() => globalThis.edition === 'next', { polling });
  await untilState(page, 'ready');
  const updated = await stateOf(page);
  assert.notEqual(updated.version, version);
  assert.deepEqual([updated.waiting, updated.updatedElsewhere], [false, false]);
  assert.deepEqual(await cachesOf(page), [`tidysump-${updated.version}`]);
  assert.equal(await askCore(page), 'unknown-op');
  for (const url of await loadedBy(page)) {
    assert.equal((await fetch(url)).status, 200, `${url} is of the new version`);
  }
  await untilState(other, 'updatedElsewhere');
  assert.equal(await other.evaluate(() => globalThis.untouched), true, 'not reloaded');
});

test('an update with one file missing changes nothing', async (t) => {
  const [now, next] = await exportEditions(t);
  const host = await startFolderHost(t, now);
  const page = await (await openBrowser(t)).newPage();
  await page.goto(host.url);
  await untilState(page, 'ready');
  const { version } = await stateOf(page);

  host.folder = next;
  host.missing.add('/manifest.webmanifest');
  const outcome = await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    const found = new Promise((resolve) => (registration.onupdatefound = resolve));
    await registration.update();
    await found;
    const { installing } = registration;
    await new Promise((resolve) => {
      installing.onstatechange = () => installing.state !== 'installing' && resolve();
      if (installing.state !== 'installing') resolve();
    });
    return installing.state;
  });
  assert.equal(outcome, 'redundant');
  assert.equal((await stateOf(page)).waiting, false);
  await page.reload();
  await untilState(page, 'ready');
  assert.equal((await stateOf(page)).version, version);
  assert.deepEqual(await cachesOf(page), [`tidysump-${version}`]);
  assert.equal(await askCore(page), 'unknown-op');
});
