// Photos of a job: made small and nameless, kept with their event, shown, deleted;
// a store that is full or old loses nothing.
import assert from 'node:assert/strict';
import { randomBytes } from 'node:crypto';
import { test } from 'node:test';
import { halves, segments, withExif } from './exif.js';
import { tapAt } from './finger.js';
import { goTo, plant, startJob, stored } from './job-page.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import {
  choosePicture,
  coloursOf,
  keepPicture,
  limitStorage,
  noisy,
  pictures,
  siteKept,
} from './photos-page.js';
import { seen, tap, tapText, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

const kinds = async (page) => (await stored(page, 'events')).map(({ kind }) => kind);

/** Taps the first photo on the screen; a tap enlarges it. */
async function enlarge(page) {
  await tapAt(page, '.photos button');
  await page.waitForSelector('dialog[open] img');
}

test('a photo with a place and a turned camera goes in; none of it comes out, and it stands upright', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  const original = withExif(await halves(page, 400, 200));
  assert.ok(segments(original).includes('e1'), 'there is EXIF to be lost');
  assert.ok(original.includes('Plainphone'));
  await keepPicture(t, page, original, 'plug');
  const [photo] = await pictures(page);
  const kept = Buffer.from(photo.base64, 'base64');
  assert.deepEqual(
    segments(kept).filter((marker) => /^e[1-9a-f]|^fe/.test(marker)),
    [],
    'no EXIF, no other application data, no comment',
  );
  for (const trace of ['Exif', 'Plainphone', 'http']) assert.ok(!kept.includes(trace), trace);
  assert.deepEqual([photo.type, photo.width, photo.height], ['image/jpeg', 200, 400]);
  assert.equal(photo.bytes, kept.length);
  const [top, bottom] = await coloursOf(page, photo.base64, [
    [0.5, 0.2],
    [0.5, 0.8],
  ]);
  assert.ok(top[0] > 200 && top[2] < 60, `red on top: ${top}`);
  assert.ok(bottom[2] > 200 && bottom[0] < 60, `blue below: ${bottom}`);

  const [event] = await stored(page, 'events');
  assert.deepEqual([event.kind, event.step, event.what], ['photo', 'identify', 'plug']);
  assert.deepEqual([photo.job, photo.id, photo.what], [event.job, event.id, 'plug']);
  assert.deepEqual(complaints, []);
});

test('a large photo is kept with 1600 px along its longest side', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  await keepPicture(t, page, await halves(page, 4000, 3000), 'pan');
  const [{ width, height, bytes }] = await pictures(page);
  assert.deepEqual([width, height], [1600, 1200]);
  assert.ok(bytes < 400_000, `${bytes} bytes`);
});

test('what no browser can read is told in one sentence, and nothing is kept', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  for (const [name, bytes] of [
    [
      'shot.heic',
      Buffer.concat([Buffer.from('000000186674797068656963', 'hex'), randomBytes(999)]),
    ],
    ['broken.jpg', (await halves(page, 400, 200)).subarray(0, 300)],
    ['empty.jpg', Buffer.alloc(0)],
  ]) {
    await choosePicture(t, page, bytes, 'seal', name);
    await untilSeen(page, words('photo.unreadable'));
    assert.deepEqual(await kinds(page), [], name);
  }
  await keepPicture(t, page, await halves(page, 40, 20));
  assert.ok(!(await seen(page)).includes(words('photo.unreadable')), 'it is over');
});

test('a photo in the record: enlarged, deleted for good, its event stays', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  await keepPicture(t, page, await halves(page, 400, 200), 'filter');
  const [{ job }] = await stored(page, 'events');
  await goTo(page, `#/record/${job}`);
  await untilSeen(page, words('record.photos'));
  await enlarge(page);
  const alt = await page.$eval('dialog img', (img) => img.alt);
  assert.match(alt, new RegExp(words('photo.what.filter')));
  await page.keyboard.press('Escape');
  await page.waitForFunction(() => !document.querySelector('dialog'), { polling });
  await enlarge(page);
  await tap(page, words('photo.delete'));
  await untilSeen(page, words('photo.delete.sure'));
  await tap(page, words('photo.delete.no'));
  assert.equal((await pictures(page)).length, 1, 'asked first');
  await tap(page, words('photo.delete'));
  await tap(page, words('photo.delete.yes'));
  await untilSeen(page, /The picture is not on this phone/);
  assert.deepEqual(await pictures(page), []);
  assert.deepEqual(await kinds(page), ['photo']);
  assert.deepEqual(complaints, []);
});

test('a photo that is taken back is hidden; its picture goes with the photos of the job', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  await keepPicture(t, page, await halves(page, 400, 200), 'plug');
  await tap(page, words('job.undo'));
  await untilSeen(page, words('job.undone'));
  assert.equal(await page.$('.photos'), null);
  assert.equal((await pictures(page)).length, 1);
  await goTo(page, '#/keep');
  await tapText(page, words('room.erase'));
  await tap(page, words('room.erase.yes'));
  await untilSeen(page, words('room.erased'));
  assert.deepEqual(await pictures(page), []);
  assert.deepEqual((await kinds(page)).sort(), ['photo', 'undo']);
});

const roomForSome = 1_500_000; // bytes, of pictures

test('the store is full: it is said, nothing that was there is lost, and the photo can be kept once there is room', async (t) => {
  const roomy = await openSite(t);
  await untilState(roomy.page, 'ready');
  const room = (await siteKept(roomy.page)) + roomForSome;
  await roomy.browser.close();
  let lift;
  const { page } = await openSite(t, async (fresh, url) => {
    lift = await limitStorage(fresh, url, room);
  });
  await untilState(page, 'ready');
  await startJob(page, bike);
  const noise = await noisy(page);
  const all = async () => [
    await pictures(page),
    await stored(page, 'events'),
    await stored(page, 'jobs'),
  ];
  let before;
  let count; // of pictures that were kept
  do {
    before = await all();
    const kept = before[0].reduce((sum, { bytes }) => sum + bytes, 0);
    assert.ok(kept < 2 * room, 'the limit holds'); // what is remembered of it (limitStorage)
    await choosePicture(t, page, noise, 'pan');
    while ((count = (await pictures(page)).length) === before[0].length)
      if ((await seen(page)).includes(words('photo.waiting'))) break;
  } while (count > before[0].length);
  await untilSeen(page, words('store.full'));
  assert.ok(before[0].length > 0, 'some were kept');
  assert.deepEqual(await all(), before);
  await lift();
  await tap(page, words('photo.again'));
  await untilSeen(page, words('photo.kept'));
  assert.equal((await pictures(page)).length, before[0].length + 1);
  assert.ok(!(await seen(page)).includes(words('store.full')), 'the trouble is over');
});

const versions = {
  1: (db) => {
    db.createObjectStore('jobs', { keyPath: 'id' });
    db.createObjectStore('events', { keyPath: ['job', 'id'] });
    db.createObjectStore('settings');
  },
  2: (db) => {
    db.createObjectStore('cards', { keyPath: 'key' });
    db.createObjectStore('lines', { keyPath: 'key' });
  },
};

for (const version of [1, 2])
  test(`a store of version ${version} keeps all that it held, and takes photos`, async (t) => {
    const { page, url, complaints } = await openSite(t, async (fresh) => {
      await fresh.setRequestInterception(true);
      fresh.on('request', (request) =>
        globalThis.early
          ? request.continue()
          : request.respond({ contentType: 'text/html', body: '<h1>early</h1>' }),
      );
    });
    const makers = Object.entries(versions).filter(([n]) => n <= version);
    await page.evaluate(
      (to, sources) =>
        new Promise((resolve, reject) => {
          const opening = indexedDB.open('tidysump', to);
          opening.onerror = () => reject(opening.error);
          opening.onupgradeneeded = () => {
            // eslint-disable-next-line no-eval -- the source of a function from beside this page
            for (const source of sources) (0, eval)(source)(opening.result);
          };
          opening.onsuccess = () => (opening.result.close(), resolve());
        }),
      version,
      makers.map(([, make]) => String(make)),
    );
    const job = {
      id: 'old',
      name: bike,
      started: '2026-11-20T09:00:00.000Z',
      card,
      bench: { system: 'us' },
      summary: { done: 1, steps: 38 },
    };
    await plant(page, job, [{ id: 'e', time: job.started, kind: 'done', step: 'identify' }]);
    globalThis.early = true;
    t.after(() => (globalThis.early = false));
    await page.goto(url);
    await untilSeen(page, words('bikes.resume'));
    assert.deepEqual(
      (await stored(page, 'jobs')).map(({ id }) => id),
      ['old'],
    );
    const [line] = await stored(page, 'log');
    assert.deepEqual([line.id, line.bike, line.summary.done], ['old', card.id, 1]);
    await goTo(page, '#/job/old/step/look-oil');
    await keepPicture(t, page, await halves(page, 40, 20));
    assert.deepEqual((await kinds(page)).sort(), ['done', 'photo']);
    assert.equal((await pictures(page))[0].what, 'pan', 'what is likely at this step');
    assert.deepEqual(complaints, []);
  });
