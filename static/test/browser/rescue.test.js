import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { chooseText } from './choose-file.js';
import { download } from './download.js';
import { exportEdition } from './editions.js';
import { startFolderHost } from './folder-host.js';
import { goTo, plant, stored } from './job-page.js';
import { openBrowser, temporaryFolder } from './launch.js';
import { polling, untilState } from './page.js';
import { seen, tap, untilSeen } from './person.js';
import { sampleJobs } from './sample-jobs.js';
import { words } from './words.js';

const isShown = (page) => page.evaluate(() => document.getElementById('rescue')?.hidden === false);

/** A host with an edition, a browser whose store holds jobs of it, and where its parts are. */
async function world(t) {
  const folder = await exportEdition(t);
  const host = await startFolderHost(t, folder);
  const browser = await openBrowser(t);
  const page = await browser.newPage();
  await page.goto(host.url);
  await untilState(page, 'ready');
  for (const [job, events] of sampleJobs([])) await plant(page, job, events);
  const [bundled] = await stored(page, 'jobs');
  await page.evaluate(plantAll, bundled.id);
  const index = readFileSync(join(folder, 'index.html'), 'utf8');
  const find = (pattern) => index.match(pattern)[1];
  const screens = readdirSync(join(folder, 'app')).find((name) => /^screens.*\.js$/.test(name));
  const parts = {
    script: find(/src="([^"]*app\/main[^"]*)"/),
    'first part': find(/rel="modulepreload" href="([^"]*)"/),
    style: find(/rel="stylesheet" href="([^"]*)"/),
    words: find(/href="([^"]*words\/en\/first[^"]*)"/),
    bikes: find(/href="([^"]*bikes[^"]*)"/),
    screens: `/app/${screens}`,
    rescue: find(/src="([^"]*app\/rescue[^"]*)"/),
  };
  return { host, browser, page, parts };
}

/** Runs in the page: puts what else a store may hold beside a job. */
const plantAll = (id) =>
  new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const db = opening.result;
      const tx = db.transaction(['bundles', 'beside', 'aside', 'photos', 'events'], 'readwrite');
      tx.objectStore('bundles').put({
        job: id,
        events: [
          { id: 'in-bundle', time: '2026-11-02T08:00:00Z', kind: 'note', text: 'b \u{1f527}' },
        ],
      });
      tx.objectStore('beside').put({ job: id, kind: 'event', id: 'in-bundle', text: '{"id":"x"}' });
      tx.objectStore('aside').put({
        key: 'a',
        kind: 'card',
        text: '{}',
        why: [],
        from: '',
        time: '',
      });
      const blob = new Blob([new Uint8Array(100_000).map((_, n) => n % 251)], {
        type: 'image/jpeg',
      });
      tx.objectStore('photos').put({ job: id, id: 'p', what: 'plug', blob, bytes: blob.size });
      tx.objectStore('events').put({ job: 'nobody', id: 'orphan', kind: 'note' });
      tx.oncomplete = () => (db.close(), resolve());
      tx.onabort = () => reject(tx.error);
    };
  });

/** A page that gets everything from the host, as on a first visit. */
async function uncached(browser) {
  const page = await browser.newPage();
  await page.setBypassServiceWorker(true);
  await page.setCacheEnabled(false);
  return page;
}

/** Saves the records; resolves to the lines of the file, by kind. */
async function rescued(page, t) {
  const { name, text } = await download(page, await temporaryFolder(t), words('rescue.save'));
  assert.match(name, /^tidysump-rescue-\d{4}-\d\d-\d\d\.txt$/);
  const [head, ...lines] = text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
  assert.deepEqual(
    { ...head, made: typeof head.made },
    { format: 'tidysump-backup', version: 3, made: 'string', rescue: true },
  );
  assert.ok('end' in lines.at(-1));
  const of = (kind) => lines.filter((line) => kind in line).map((line) => line[kind]);
  await untilSeen(page, words('rescue.saved', { count: lines.length - 1, name }));
  const outcomes = await page.evaluate(
    () =>
      [...document.querySelectorAll('#rescue > p')].filter((p) => p.checkVisibility()).length - 2,
  );
  assert.equal(outcomes, 1, 'one thing is said of it');
  return { of, lines };
}

test('whatever part is missing: a sentence, loading again, and the records in a file', async (t) => {
  const { host, browser, page, parts } = await world(t);
  const jobs = await stored(page, 'jobs');
  const events = await stored(page, 'events');
  for (const name of ['script', 'first part', 'style', 'words', 'bikes', 'screens']) {
    host.missing = new Set([parts[name]]);
    const broken = await uncached(browser);
    await broken.goto(host.url);
    if (name === 'screens') {
      await broken.waitForSelector('h1');
      assert.equal(await isShown(broken), false, 'the first screen needs none of it');
      await broken.evaluate(() => (location.hash = '#/settings'));
    }
    await untilSeen(broken, words('rescue.missing')).catch((error) => {
      throw new Error(`${name}: ${error.message}`);
    });
    const { of } = await rescued(broken, t);
    assert.deepEqual(
      of('job').map(({ id }) => id),
      jobs.map(({ id }) => id),
      name,
    );
    const ids = (list) => list.map(({ job, id }) => `${job} ${id}`).sort();
    assert.deepEqual(
      ids(of('event')),
      ids([...events, { job: jobs[0].id, id: 'in-bundle' }]),
      `${name}: those of no job too`,
    );
    assert.equal(of('event').find(({ id }) => id === 'in-bundle').text, 'b \u{1f527}');
    assert.deepEqual([of('beside').length, of('aside').length, of('log').length], [1, 1, 0], name);
    const [photo] = of('photo');
    const bytes = Buffer.from(photo.data, 'base64');
    assert.ok(bytes.length === 100_000 && bytes.every((byte, n) => byte === n % 251), name);
    host.missing.clear();
    await Promise.all([broken.waitForNavigation(), tap(broken, words('rescue.again'))]);
    await broken.waitForFunction(() => document.querySelector('h1'), { polling });
    assert.equal(await isShown(broken), false, `${name} is there again`);
    await broken.close();
  }
});

test('the page works without the rescue, and a later screen that came after all takes it away', async (t) => {
  const { host, browser, parts } = await world(t);
  host.missing = new Set([parts.rescue]);
  const page = await uncached(browser);
  await page.goto(host.url);
  await untilSeen(page, words('bikes.title'));
  host.missing = new Set([parts.screens]);
  await page.reload();
  await page.waitForSelector('h1');
  await page.evaluate(() => (location.hash = '#/bench'));
  await untilSeen(page, words('rescue.missing'));
  assert.doesNotMatch(await seen(page), new RegExp(words('page.failed')), 'said once');
  host.missing.clear();
  await page.evaluate(() => (location.hash = '#/bikes'));
  await untilSeen(page, words('bikes.title'));
  assert.equal(await isShown(page), false);
});

test('an older program at a newer store says so, touches nothing, and gives the records out', async (t) => {
  const { host, browser, page } = await world(t);
  const jobs = await stored(page, 'jobs');
  await page.goto('about:blank');
  const other = await browser.newPage();
  await other.goto(`${host.url}card.schema.json`);
  await other.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('tidysump', 99);
        opening.onerror = () => reject(opening.error);
        opening.onupgradeneeded = () => {
          opening.result.createObjectStore('future').put({ a: 'thing' }, 'key');
        };
        opening.onsuccess = () => (opening.result.close(), resolve());
      }),
  );
  await page.bringToFront();
  await page.goto(host.url);
  await untilSeen(page, words('store.newer'));
  assert.doesNotMatch(await seen(page), new RegExp(words('store.failed').slice(0, 30)));
  const { of } = await rescued(page, t);
  assert.deepEqual(
    of('job').map(({ id }) => id),
    jobs.map(({ id }) => id),
  );
  assert.deepEqual(of('future'), [{ a: 'thing' }]);
  const versions = await page.evaluate(() => indexedDB.databases());
  assert.deepEqual(versions, [{ name: 'tidysump', version: 99 }]);
});

test('restoring reads what the rescue saved', async (t) => {
  const { browser, host, page } = await world(t);
  const jobs = await stored(page, 'jobs');
  await page.evaluate(() => dispatchEvent(new CustomEvent('rescue', { cancelable: true })));
  const { text } = await download(page, await temporaryFolder(t), words('rescue.save'));
  const other = await (await browser.createBrowserContext()).newPage();
  await other.goto(host.url);
  await untilState(other, 'ready');
  await goTo(other, '#/keep');
  await chooseText(other, '#backup-file', 'tidysump-rescue.txt', text);
  await tap(other, words('restore.do'));
  await untilSeen(other, words('restore.done'));
  const ids = (list) => list.map(({ id }) => id).sort();
  assert.deepEqual(ids(await stored(other, 'jobs')), ids(jobs));
  const [photo] = await stored(other, 'photos');
  assert.equal(photo.id, 'p');
  const events = [
    ...(await stored(other, 'events')),
    ...(await stored(other, 'bundles')).flatMap((bundle) => bundle.events),
  ];
  const all = await stored(page, 'events');
  const known = all.filter(({ job }) => job !== 'nobody');
  assert.deepEqual(ids(events), ids([...known, { id: 'in-bundle' }]));
});

test('what writes the file is missing too: said, and nothing is empty', async (t) => {
  const { host, browser, parts } = await world(t);
  const [, file] = (await (await fetch(host.url)).text()).match(/data-src="([^"]+)"/);
  host.missing = new Set([parts.script, file]);
  const page = await uncached(browser);
  await page.goto(host.url);
  await tap(page, words('rescue.save'));
  await untilSeen(page, words('rescue.refused'));
});

test('where nothing was kept the rescue says so, and makes no store', async (t) => {
  const folder = await exportEdition(t);
  const host = await startFolderHost(t, folder);
  const page = await (await openBrowser(t)).newPage();
  const [, script] = readFileSync(join(folder, 'index.html'), 'utf8').match(
    /src="([^"]*app\/main[^"]*)"/,
  );
  host.missing.add(script);
  await page.goto(host.url);
  await untilSeen(page, words('rescue.missing'));
  await tap(page, words('rescue.save'));
  await untilSeen(page, words('rescue.none'));
  assert.deepEqual(await page.evaluate(() => indexedDB.databases()), []);
  host.missing.clear();
  await Promise.all([page.waitForNavigation(), tap(page, words('rescue.again'))]);
  await untilSeen(page, words('bikes.title'));
});
