import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { exportEdition, exportEditions, exportFirstEdition } from './editions.js';
import { startFolderHost } from './folder-host.js';
import { done, goTo, startJob, untilStep } from './job-page.js';
import { openBrowser, startServer, temporaryFolder } from './launch.js';
import { askCore, polling, stateOf, untilState } from './page.js';
import { tap, tapText, untilSeen } from './person.js';
import { words } from './words.js';

/** Looks for an update, and resolves to what became of its worker. */
const tryUpdate = (page) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    // The browser may have looked, and found it, a moment before.
    const found = registration.installing ?? registration.waiting;
    if (!found) return 'redundant';
    await new Promise((resolve) => {
      const look = () => found.state !== 'installing' && resolve();
      found.addEventListener('statechange', look);
      look();
    });
    return found.state;
  });

/** A page of the edition that a host has now. */
async function visit(t, folder, profile) {
  const host = await startFolderHost(t, folder);
  const browser = await openBrowser(t, profile);
  const page = await browser.newPage();
  await page.goto(host.url);
  await untilState(page, 'ready');
  const { version } = await stateOf(page);
  return { host, browser, page, version };
}

/** The URLs of all files that the page has loaded. */
const loadedBy = (page) =>
  page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));

const scriptOf = (page) => page.evaluate(() => document.querySelector('script[type=module]').src);

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
  assert.deepEqual(
    (await cachesOf(page)).sort(),
    ['agreed', version, updated.version].map((name) => `tidysump-${name}`).sort(),
    'the old version stays for the other window',
  );
  assert.equal(await askCore(page), 'unknown-op');
  for (const url of await loadedBy(page)) {
    assert.equal((await fetch(url)).status, 200, `${url} is of the new version`);
  }
  await untilState(other, 'updatedElsewhere');
  assert.equal(await other.evaluate(() => globalThis.untouched), true, 'not reloaded');
});

/** Agrees to the version that waits; the page is then of the edition called "next". */
async function takeUpdate(page) {
  await Promise.all([
    page.waitForNavigation(),
    page.evaluate(() => globalThis.tidysump.offline.takeOver()),
  ]);
  await page.waitForFunction(() => globalThis.edition === 'next', { polling });
  await untilState(page, 'ready');
}

/** Deletes kept files, as a browser does that is short of room. */
const drop = (page, paths) =>
  page.evaluate(async (gone) => {
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const path of gone) await cache.delete(path);
    }
  }, paths);

test('an update from a host half way through a deployment changes nothing', async (t) => {
  const [now, next] = await exportEditions(t);
  const { host, page, version } = await visit(t, now);
  const main = (await scriptOf(page)).replace(host.url, '/');
  host.folder = next;
  const fresh = await (await fetch(host.url)).text();
  const half = {
    'the manifest is missing': () => host.missing.add('/manifest.webmanifest'),
    'the page is the old one': () =>
      host.altered.set('/', () => readFileSync(join(now, 'index.html'))),
    'a script is cut off': () =>
      host.altered.set(fresh.match(/src="(\/app\/main[^"]+)"/)[1], (body) => body.subarray(1)),
    'the style is a page that says "not found"': () =>
      host.altered.set(fresh.match(/href="(\/app\/main[^"]+)"/)[1], () => '<p>not found'),
  };
  for (const [name, deploy] of Object.entries(half)) {
    host.missing.clear();
    host.altered.clear();
    deploy();
    assert.equal(await tryUpdate(page), 'redundant', name);
    assert.equal((await stateOf(page)).waiting, false, name);
    await page.reload();
    await untilState(page, 'ready');
    assert.equal((await stateOf(page)).version, version, name);
    assert.equal((await scriptOf(page)).replace(host.url, '/'), main, name);
    assert.deepEqual(
      (await cachesOf(page)).sort(),
      ['agreed', version].map((v) => `tidysump-${v}`).sort(),
      name,
    );
  }
  assert.equal(await askCore(page), 'unknown-op');
  host.missing.clear();
  host.altered.clear();
  assert.equal(await tryUpdate(page), 'installed', 'when the deployment is over');
});

test('files that the browser dropped are counted at the start and fetched anew', async (t) => {
  const { host, page, version } = await visit(t, await exportEdition(t));
  const main = (await scriptOf(page)).replace(host.url, '/');
  const gone = ['/', main, '/manifest.webmanifest'];
  await drop(page, gone);
  host.missing = new Set(gone.slice(1));
  const again = await page.browser().newPage();
  const served = host.folder;
  // The page itself comes from the host; what it needs is missing there too.
  await again.goto(`${host.url}card.schema.json`);
  const told = await again.evaluate(async () => {
    const { port1, port2 } = new MessageChannel();
    const heard = [];
    const twice = new Promise((resolve) => {
      port1.onmessage = ({ data }) => heard.push(data) === 2 && resolve();
    });
    navigator.serviceWorker.controller.postMessage({ type: 'standing' }, [port2]);
    await twice;
    return heard;
  });
  const [{ want }] = told;
  assert.deepEqual(
    told.map(({ have }) => want - have),
    [3, 2],
    'the page could be had',
  );
  host.missing.clear();
  assert.equal(host.folder, served);
  await again.goto(host.url);
  await untilState(again, 'ready');
  const state = await stateOf(again);
  assert.deepEqual([state.have, state.want, state.version], [want, want, version]);
  host.missing = { has: () => true };
  await again.reload();
  await untilState(again, 'ready');
  assert.equal(await askCore(again), 'unknown-op');
});

test('closing and opening the app in mid-job takes no update that was not agreed to', async (t) => {
  const [now, next] = await exportEditions(t);
  const profile = await temporaryFolder(t);
  const { host, browser, page, version } = await visit(t, now, profile);
  await startJob(page, 'Corda');
  await done(page, 1);
  host.folder = next;
  assert.equal(await tryUpdate(page), 'installed');
  await browser.close(); // all windows: the new worker becomes active

  const second = await openBrowser(t, profile);
  const again = await second.newPage();
  await again.goto(host.url);
  await untilState(again, 'waiting');
  assert.equal((await stateOf(again)).version, version);
  assert.equal(await again.evaluate(() => globalThis.edition), undefined);
  const active = await again.evaluate(async () => {
    const { active, waiting } = await navigator.serviceWorker.ready;
    return [active.state, waiting];
  });
  assert.deepEqual(active, ['activated', null], 'nothing waits: the new worker is active');
  await tapText(again, 'Corda');
  await untilStep(again, 2);
  await done(again, 2);
  assert.equal(await again.evaluate(() => globalThis.later), undefined);
  await goTo(again, '#/bikes');
  await Promise.all([again.waitForNavigation(), tap(again, words('update.take'))]);
  await again.waitForFunction(() => globalThis.edition === 'next', { polling });
  await untilState(again, 'ready');
  assert.notEqual((await stateOf(again)).version, version);
  await tapText(again, 'Corda');
  await untilStep(again, 3);
});

test('a window that did not take the update is told, and opens what it had not yet', async (t) => {
  const [now, next] = await exportEditions(t);
  const { host, browser, page } = await visit(t, now);
  const other = await browser.newPage();
  // Later parts are asked for when the test says so.
  await other.evaluateOnNewDocument(() => {
    const put = HTMLHeadElement.prototype.append;
    HTMLHeadElement.prototype.append = function (...things) {
      if (globalThis.held) put.apply(this, things);
      else globalThis.held = () => put.apply(this, things);
    };
  });
  await other.goto(host.url);
  await untilState(other, 'ready');
  await other.waitForFunction(() => globalThis.held, { polling });
  host.folder = next;
  assert.equal(await tryUpdate(page), 'installed');
  await untilState(page, 'waiting');
  await takeUpdate(page);
  await untilState(other, 'updatedElsewhere');
  await untilSeen(other, words('update.elsewhere'));
  await other.evaluate(() => globalThis.held());
  await goTo(other, '#/settings');
  const style = await other.evaluate(() =>
    [...document.styleSheets].map(({ href }) => href).at(-1),
  );
  assert.match(style, /\/app\/screens/);
  assert.equal((await fetch(style)).status, 404, 'the host has it no more');
  const wholePart = await other.evaluate(async () => {
    const names = performance.getEntriesByType('resource').map(({ name }) => name);
    const all = names.filter((name) => name.startsWith(location.origin));
    return (await Promise.all(all.map(async (name) => (await fetch(name)).ok))).every(Boolean);
  });
  assert.ok(wholePart, 'all that the window has asked for it can ask for again');
  const edition = await other.evaluate(() => globalThis.edition ?? globalThis.later ?? 'now');
  assert.equal(edition, 'now', 'nothing of the new version came in');
});

test('from the worker of the first releases to this one, and on', async (t) => {
  const first = await exportFirstEdition(t);
  const [now, next] = await exportEditions(t);
  const profile = await temporaryFolder(t);
  const { host, browser, page, version } = await visit(t, first, profile);
  const window = await browser.newPage();
  await window.goto(host.url);
  await untilState(window, 'ready');
  await page.bringToFront();
  await startJob(page, 'Corda');
  await done(page, 1);
  // Agreed to in a page of the first release.
  host.folder = now;
  assert.equal(await tryUpdate(page), 'installed');
  await untilState(page, 'waiting');
  await Promise.all([
    page.waitForNavigation(),
    page.evaluate(() => globalThis.tidysump.offline.takeOver()),
  ]);
  await untilState(page, 'ready');
  const { version: taken } = await stateOf(page);
  assert.notEqual(taken, version);
  await untilState(window, 'updatedElsewhere');
  await untilStep(page, 2);
  // On to the next, not agreed to at first.
  host.folder = next;
  assert.equal(await tryUpdate(page), 'installed');
  await browser.close();
  const again = await (await openBrowser(t, profile)).newPage();
  await again.goto(host.url);
  await untilState(again, 'waiting');
  assert.equal((await stateOf(again)).version, taken);
  await takeUpdate(again);
  await tapText(again, 'Corda');
  await untilStep(again, 2);
});

test('a phone with the worker of the first releases comes to this one when all is closed', async (t) => {
  const first = await exportFirstEdition(t);
  const now = await exportEdition(t);
  const profile = await temporaryFolder(t);
  const { host, browser, page, version } = await visit(t, first, profile);
  host.folder = now;
  assert.equal(await tryUpdate(page), 'installed');
  await browser.close();
  const again = await (await openBrowser(t, profile)).newPage();
  await again.goto(host.url);
  await untilState(again, 'ready');
  const { version: taken, waiting } = await stateOf(again);
  assert.notEqual(taken, version);
  assert.equal(waiting, false);
  host.missing = { has: () => true };
  await again.reload();
  await untilState(again, 'ready');
  assert.equal(await askCore(again), 'unknown-op');
});
