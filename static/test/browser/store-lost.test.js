// Records that the browser takes away while a job is open come back and that is said;
// what a person erased does not.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { done, goTo, startJob, stored, untilStep } from './job-page.js';
import { openSite } from './open-site.js';
import { enter, seen, tap, tapText, type, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

/** A job with a reading and a note, two steps on; resolves to what lies in the store of it. */
async function begun(page) {
  await startJob(page, bike);
  await enter(page, words('ask.odometer'), '12 400 km');
  await untilSeen(page, words('job.kept', { value: '12400 km' }));
  await done(page, 1);
  await tapText(page, words('job.note'));
  await type(page, words('job.note'), 'not lost');
  await tap(page, words('job.note.save'));
  await untilSeen(page, '✎ not lost');
  await done(page, 2);
  const [job] = await stored(page, 'jobs');
  return { job, events: await stored(page, 'events') };
}

const byID = (a, b) => (a.id < b.id ? -1 : 1);

const ways = {
  'the browser clears what the site keeps': async (page, url) => {
    const devtools = await page.createCDPSession();
    const origin = new URL(url).origin;
    await devtools.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
  },
  'the browser clears all there is of the site': async (page, url) => {
    const devtools = await page.createCDPSession();
    const origin = new URL(url).origin;
    await devtools.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
  },
  'the database is deleted': (page) =>
    page.evaluate(
      () =>
        new Promise((resolve, reject) => {
          const deleting = indexedDB.deleteDatabase('tidysump');
          deleting.onsuccess = resolve;
          deleting.onerror = () => reject(deleting.error);
        }),
    ),
};

for (const [name, clear] of Object.entries(ways))
  test(`${name} while a job is open: it is written back, said, and goes on`, async (t) => {
    const { page, url, complaints } = await openSite(t);
    const before = await begun(page);
    assert.equal(before.events.length, 4);
    await clear(page, url);
    await untilSeen(page, words('job.written-back'));
    assert.deepEqual((await stored(page, 'events')).sort(byID), before.events.sort(byID));
    assert.deepEqual(await stored(page, 'jobs'), [before.job]);
    await done(page, 3);
    assert.equal((await stored(page, 'events')).length, 5);
    await page.reload();
    await untilStep(page, 4);
    await goTo(page, '#/bikes');
    await untilSeen(page, words('bikes.resume'));
    assert.deepEqual(complaints, []);
  });

test('a window that heard nothing of an erasing does not bring back what it holds', async (t) => {
  const deaf = (page) =>
    page.evaluateOnNewDocument(() => {
      delete globalThis.BroadcastChannel;
    });
  const { page: two, browser, url } = await openSite(t, deaf);
  await begun(two);
  const one = await browser.newPage();
  await one.goto(`${url}#/keep/erase`);
  await type(one, words('erase.label', { word: words('erase.word') }), words('erase.word'));
  await tap(one, words('erase.do'));
  await untilSeen(one, words('bikes.title'));
  await two.bringToFront();
  await untilSeen(two, words('job.unknown'));
  assert.ok(!(await seen(two)).includes(words('job.written-back')));
  assert.deepEqual([await stored(one, 'jobs'), await stored(one, 'events')], [[], []]);
});
