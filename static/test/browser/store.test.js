// A store that is full or missing: it is said, nothing typed is lost, and what
// needs no store works.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { comesTo } from './comes-to.js';
import { done, goTo, plantSetting, startJob, stored, tapDone, untilStep } from './job-page.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { choose, enter, heading, seen, tap, tapText, typed, untilSeen } from './person.js';
import { withoutStore } from './phones.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

// How a write fails: at once, or only when the transaction is to be kept.
const failures = {
  'the write is refused': () =>
    function () {
      globalThis.failed++;
      throw new DOMException('planted', 'QuotaExceededError');
    },
  'the transaction breaks off': (add) =>
    function (...values) {
      globalThis.failed++;
      const request = add.apply(this, values);
      request.addEventListener('success', () => this.transaction.abort());
      return request;
    },
};

/** Makes writes of events fail and be counted, until the page's mend() is called. */
async function breakStore(page, failing) {
  await page.evaluate(() => {
    const { add } = IDBObjectStore.prototype;
    globalThis.failed = 0;
    globalThis.mend = () => (IDBObjectStore.prototype.add = add);
  });
  await page.evaluate(`IDBObjectStore.prototype.add = (${failing})(IDBObjectStore.prototype.add)`);
}

const told = {
  'the write is refused': 'store.full',
  'the transaction breaks off': 'job.not-saved',
};

for (const [name, failing] of Object.entries(failures)) {
  const word = told[name];
  test(`the store is full (${name}): it is said, nothing typed is lost, and it can be tried again`, async (t) => {
    const { page, complaints } = await openSite(t);
    await startJob(page, bike);
    await breakStore(page, failing);
    await enter(page, words('ask.odometer'), '12 400 km');
    await untilSeen(page, words(word));
    await comesTo(() => typed(page, words('ask.odometer')), '12 400 km');
    await tapDone(page);
    await page.waitForFunction(() => globalThis.failed === 2, { polling });
    await untilStep(page, 1);
    assert.deepEqual(await stored(page, 'events'), []);

    await page.evaluate(() => globalThis.mend());
    await tap(page, words('job.keep'));
    await untilSeen(page, words('job.kept', { value: '12400 km' }));
    assert.ok(!(await seen(page)).includes(words(word)), 'the trouble is over');
    await comesTo(() => typed(page, words('ask.odometer')), '');
    await done(page, 1);
    const kinds = (await stored(page, 'events')).map(({ kind }) => kind);
    assert.deepEqual(kinds.sort(), ['done', 'reading']);
    assert.deepEqual(complaints, []);
  });
}

test('a level that could not be stored can be chosen again', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  const job = (await page.evaluate(() => location.hash)).replace(/\/step\/.*/, '');
  await goTo(page, `${job}/step/level-found-engine`);
  await breakStore(page, failures['the write is refused']);
  await choose(page, words('level.low'));
  await untilSeen(page, words('store.full'));
  await page.evaluate(() => globalThis.mend());
  await choose(page, words('level.low'));
  const over = () => !document.querySelector('[role=alert]');
  await page.waitForFunction(over, { polling, timeout: patience() });
  assert.deepEqual(
    (await stored(page, 'events')).map(({ value }) => value),
    ['low'],
  );
});

const noStore = {
  'is not there': withoutStore,
  'is forbidden': () =>
    Object.defineProperty(globalThis, 'indexedDB', {
      get() {
        throw new DOMException('planted', 'SecurityError');
      },
    }),
};

for (const [name, without] of Object.entries(noStore)) {
  test(`a store that ${name}: bikes and plan work, and it is said`, async (t) => {
    const { page } = await openSite(t, (page) => page.evaluateOnNewDocument(without));
    await untilSeen(page, words('store.failed'));
    await tapText(page, bike);
    await untilSeen(page, `${card.circuits[0].withFilter.value} L`);
    await tap(page, words('plan.start'));
    await untilSeen(page, words('store.failed'));
    assert.equal(await heading(page), bike, 'the plan is still there');
  });
}

test('a page that opens at a bike is in the units that were chosen', async (t) => {
  const { page } = await openSite(t);
  await untilSeen(page, bike);
  await plantSetting(page, 'system', 'us');
  await goTo(page, `#/bike/${card.id}`);
  await page.reload();
  await untilSeen(page, words('plan.start'));
  await tap(page, words('plan.start'));
  await untilStep(page, 1);
  assert.deepEqual(
    (await stored(page, 'jobs')).map(({ bench }) => bench.system),
    ['us'],
  );
});
