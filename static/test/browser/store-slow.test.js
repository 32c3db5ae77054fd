// A store that is slow, never answers, or is of a newer version: it is said as it is,
// and what needs no store works.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { setTimeout as pause } from 'node:timers/promises';
import { comesTo } from './comes-to.js';
import { goTo, plant, startJob, stored, tapDone } from './job-page.js';
import { staysAmiss } from './layout.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { alerts, answer, heading, seen, tap, tapText, type, typed, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

/** Runs in the page, before it: the store opens when the test says so. */
function heldBack() {
  const { open } = IDBFactory.prototype;
  const said = new Promise((resolve) => (globalThis.answer = resolve));
  IDBFactory.prototype.open = function (...values) {
    const request = open.apply(this, values);
    const { addEventListener } = request;
    request.addEventListener = (type, listener, ...more) =>
      addEventListener.call(
        request,
        type,
        type === 'success' ? (event) => said.then(() => listener.call(request, event)) : listener,
        ...more,
      );
    return request;
  };
}

const untilOver = (page) =>
  page.waitForFunction(() => !document.querySelector('[role=alert]'), {
    polling,
    timeout: patience(),
  });

test('a store that is slow: bikes and plan at once, a sign, and all that is kept when it answers', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  await goTo(page, '#/bikes');
  const held = await page.evaluateOnNewDocument(heldBack);
  await page.reload();
  await untilSeen(page, bike);
  await untilSeen(page, words('store.slow'));
  assert.ok(!(await seen(page)).includes(words('store.failed')));
  await tapText(page, bike);
  await untilSeen(page, words('plan.start')); // the volume stands on the first screen too
  assert.equal(await heading(page), bike);
  assert.match(await seen(page), new RegExp(`${card.circuits[0].withFilter.value}\\sL`));
  await goTo(page, '#/bikes');
  assert.ok(!(await seen(page)).includes(words('bikes.resume')));
  await page.evaluate(() => globalThis.answer());
  await untilOver(page);
  await untilSeen(page, words('bikes.resume'));
  assert.deepEqual(complaints, []);
  await page.removeScriptToEvaluateOnNewDocument(held.identifier);
});

test('a bike with a figure of its own is never planned as its card alone without a word', async (t) => {
  const { page } = await openSite(t);
  await goTo(page, `#/details/${card.id}`);
  await tapText(page, words('details.figure.add'));
  const what = `${words('own.volume-filter')} · ${words('role.engine')}`;
  await answer(page, words('details.figure.what'), what);
  await type(page, words('details.figure.value'), '2.2 L');
  await tap(page, words('details.figure.keep'));
  await untilSeen(page, words('details.figure.kept'));
  await goTo(page, `#/bike/${card.id}`);
  await page.evaluateOnNewDocument(heldBack);
  await page.reload();
  await untilSeen(page, words('bike.late'));
  await untilSeen(page, words('plan.start'));
  await tap(page, words('plan.start'));
  assert.ok((await seen(page)).includes(`${card.circuits[0].withFilter.value} L`));
  await page.evaluate(() => globalThis.answer());
  await untilOver(page);
  await untilSeen(page, words('job.step', { number: 1, steps: '' }).trim());
  const [job] = await stored(page, 'jobs');
  assert.equal(job.card.circuits[0].withFilter.value, 2.2);
  assert.equal(job.card.circuits[0].withFilter.standing, 'measured');
  await goTo(page, `#/bike/${card.id}`);
  await untilSeen(page, '2.2 L');
  assert.ok(!(await seen(page)).includes(words('bike.late')));
});

test('a job that is asked for while the store is slow comes when it answers', async (t) => {
  const { page } = await openSite(t, (page) => page.evaluateOnNewDocument(heldBack));
  await untilSeen(page, words('store.slow'));
  await tapText(page, bike);
  await tap(page, words('plan.start'));
  await untilSeen(page, words('store.slow'));
  await page.evaluate(() => globalThis.answer());
  await untilSeen(page, words('job.step', { number: 1, steps: '' }).trim());
  await untilOver(page);
  assert.equal((await stored(page, 'jobs')).length, 1);
});

test('a calculation does not wait for what was kept, and loses nothing of it', async (t) => {
  const bottles = (count) => `${words('ask.bottles.bottles')} (${count})`;
  const add = async (left) => {
    await tap(page, words('bench.add'));
    await type(page, words('ask.bottles.size'), '4 L');
    await type(page, words('ask.bottles.left'), left);
    await tap(page, words('bench.work'));
  };
  const { page } = await openSite(t);
  await goTo(page, '#/bench');
  await type(page, words('bench.line'), '3 L in mL');
  await goTo(page, '#/bench/bottles');
  await add('2.5 L');
  await untilSeen(page, bottles(1));
  const kept = () =>
    stored(page, 'settings').then((all) =>
      all.flatMap((value) => (value?.bottles ?? []).map(({ left }) => left)),
    );
  while (!(await kept()).length) await pause(polling);
  await page.evaluateOnNewDocument(heldBack);
  await page.reload();
  await untilSeen(page, words('store.slow'));
  await add('1 L');
  await untilSeen(page, bottles(1));
  await goTo(page, '#/bench');
  await comesTo(() => typed(page, words('bench.line')), '');
  await page.evaluate(() => globalThis.answer());
  await untilOver(page);
  await untilSeen(page, words('bench.line.read-as'));
  await comesTo(() => typed(page, words('bench.line')), '3 L in mL');
  await goTo(page, '#/bench/bottles');
  await untilSeen(page, bottles(2));
  assert.deepEqual(await kept(), ['2.5 L', '1 L']);
});

test('a store that never answers is not said to be none', async (t) => {
  const { page } = await openSite(t, (page) => page.evaluateOnNewDocument(heldBack));
  await untilSeen(page, words('store.slow'));
  const bench = ['#/bench', '#/bench/run-out', '#/bench/bottles'];
  for (const address of ['#/bikes', `#/bike/${card.id}`, ...bench, '#/settings', '#/trouble']) {
    await goTo(page, address);
    const text = await seen(page);
    assert.ok(text.includes(words('store.slow')), `${address}: ${text}`);
    assert.ok(!text.includes(words('store.failed')), address);
  }
});

/** Runs in the page: makes the store of a version to come. */
const makeNewer = () =>
  new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump', 6);
    opening.onerror = () => reject(opening.error);
    opening.onupgradeneeded = () => {
      const db = opening.result;
      db.createObjectStore('jobs', { keyPath: 'name' }).put({ name: 'of another kind' });
      db.createObjectStore('moons').put('new', 'key');
    };
    opening.onsuccess = () => (opening.result.close(), resolve());
  });

/** Runs in the page: the version of the store, and all that lies in it. */
const dump = async () => {
  const db = await new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => resolve(opening.result);
  });
  const all = [db.version];
  for (const of of db.objectStoreNames)
    all.push(
      await new Promise((resolve) => {
        const reading = db.transaction(of).objectStore(of).getAll();
        reading.onsuccess = () => resolve([of, reading.result]);
      }),
    );
  db.close();
  return all;
};

test('what a newer version of the app wrote is told as what it is, and stays as it is', async (t) => {
  let before;
  const { page } = await openSite(t, async (page, url) => {
    await page.goto(`${url}card.schema.json`);
    await page.evaluate(makeNewer);
    before = await page.evaluate(dump);
  });
  await untilSeen(page, words('store.newer'));
  await untilSeen(page, bike);
  await tapText(page, bike);
  await tap(page, words('plan.start'));
  await goTo(page, '#/record');
  await untilSeen(page, words('store.newer'));
  assert.ok(!(await seen(page)).includes(words('store.failed')));
  assert.deepEqual(await page.evaluate(dump), before);
  assert.equal(before[0], 6);
});

test('a window of this version, under which a newer one takes the store over, says so', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  await page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('tidysump', 6);
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => (opening.result.close(), resolve());
      }),
  );
  await tapDone(page);
  await untilSeen(page, words('store.newer'));
});

// Of every kind that JSON has, and some that look right at first.
const poison = [null, true, 7, 1e300, 'constructor', [], [null], {}, { time: 7, told: 1e300 }];
const settings = [
  ...[
    'system',
    'theme',
    'language',
    'seenChange',
    'doneBy',
    'gauge',
    'bills',
    'bill',
    'forOthers',
    'books',
  ],
  ...['due', 'notice', 'backup', 'backupLater', 'erased', 'planned', 'promise'],
];

/** Runs in the page: keeps a value under each of these keys. */
const plantAll = (keys, value) =>
  new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const tx = opening.result.transaction('settings', 'readwrite');
      for (const key of keys) tx.objectStore('settings').put(value, key);
      tx.oncomplete = () => (opening.result.close(), resolve());
    };
  });

test('settings of any kind leave the first screen as it is, and a job to go on with', async (t) => {
  const { page, complaints } = await openSite(t);
  const started = '2026-11-24T09:00:00.000Z';
  await untilSeen(page, bike);
  await plant(page, { id: 'open', name: bike, started, card, bench: { system: 'metric' } });
  for (const value of poison) {
    await page.evaluate(plantAll, settings, value);
    await page.reload();
    await untilSeen(page, words('bikes.resume'));
    await untilSeen(page, bike);
    await page.waitForFunction(() => globalThis.tidysump?.core.state === 'ready', {
      polling,
      timeout: patience(),
    });
    assert.deepEqual(await staysAmiss(page, alerts), [], JSON.stringify(value));
  }
  for (const address of [
    '#/settings',
    '#/keep',
    '#/due',
    '#/record',
    '#/bill/open',
    '#/job/open',
  ]) {
    await goTo(page, address);
    assert.ok(!(await seen(page)).includes(words('page.failed')), address);
  }
  assert.deepEqual(complaints, []);
});
