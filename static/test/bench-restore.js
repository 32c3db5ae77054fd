// What a large backup takes: reading it, putting it in, and making a table of it; and how
// long the screen stood still meanwhile. The plain write is of the same records, by
// nothing but IndexedDB.
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { digestOf, seal } from '../app/backup/seal.js';
import { made } from './backup-file.js';
import { goTo } from './browser/job-page.js';
import { launchChromium, startServer } from './browser/launch.js';
import { untilState } from './browser/page.js';
import { seen, tap, tapText } from './browser/person.js';
import { sampleCard, words } from './browser/words.js';

const count = 10_000; // jobs
const each = 30; // events of a job
const pictures = 140;
const bytesOfPicture = 540_000; // 720 kB in base64: 100 MB in all
const most = 600_000; // ms

/**
 * [{name, seconds, ratio, longest}]: how long it took, of the plain write where there is
 * one, and the longest ms in which the screen stood still.
 */
export async function restoreTimes() {
  const endings = [];
  const folder = await mkdtemp(join(tmpdir(), 'tidysump-'));
  const server = await startServer({ after: (end) => endings.push(end) });
  const browser = await launchChromium();
  try {
    const page = await browser.newPage();
    page.setDefaultTimeout(most);
    await page.setViewport({ width: 360, height: 740 });
    await page.evaluateOnNewDocument(noteStalls);
    await page.goto(server.url);
    await untilState(page, 'ready');
    const { jobs, photos } = await files(page, folder);
    const plain = await page.evaluate(writePlainly, {
      card: sampleCard('tessaly-corda-570'),
      count,
      each,
    });
    const many = await restoring(page, jobs);
    const table = await timed(page, async () => {
      await goTo(page, '#/record');
      await tapText(page, words('csv.export'));
      await tap(page, words('csv.save'));
      await until(page, words('csv.saved'));
    });
    const large = await restoring(page, photos);
    const row = (name, { seconds, longest }, ratio = '') => ({ name, seconds, longest, ratio });
    return [
      row('10,000 jobs: plain write', { seconds: plain, longest: 0 }, 1),
      row('10,000 jobs: review', many.review, many.review.seconds / plain),
      row('10,000 jobs: restore', many.restore, many.restore.seconds / plain),
      row('10,000 jobs: table', table),
      row('100 MB of photos: review', large.review),
      row('100 MB of photos: restore', large.restore),
    ];
  } finally {
    await browser.close();
    for (const end of endings) await end();
    await rm(folder, { recursive: true, force: true });
  }
}

/** Waits until a sentence stands on the screen, looking seldom enough to cost nothing. */
async function until(page, sentence) {
  for (const began = performance.now(); performance.now() - began < most;) {
    if ((await seen(page)).includes(sentence)) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`"${sentence}" does not appear`);
}

/** Runs in the page before anything else: the longest time in which nothing else could happen. */
function noteStalls() {
  globalThis.longest = 0;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries())
      globalThis.longest = Math.max(globalThis.longest, duration);
  }).observe({ type: 'longtask' });
}

/** How long an action took in seconds, and the longest task of the page meanwhile in ms. */
async function timed(page, action) {
  await page.evaluate(() => (globalThis.longest = 0));
  const began = performance.now();
  await action();
  const seconds = (performance.now() - began) / 1000;
  return { seconds, longest: await page.evaluate(() => globalThis.longest) };
}

/** Reviews and restores a file. */
async function restoring(page, path) {
  await goTo(page, '#/keep');
  const input = await page.waitForSelector('#backup-file');
  const review = await timed(page, async () => {
    await input.uploadFile(path);
    await until(page, words('restore.rule'));
  });
  const restore = await timed(page, async () => {
    await tap(page, words('restore.do'));
    await until(page, words('restore.done'));
  });
  return { review, restore };
}

/** Writes both files; resolves to their paths. */
async function files(page, folder) {
  const card = sampleCard('tessaly-corda-570');
  const { ok } = await page.evaluate((input) => globalThis.tidysump.core.call('plan', input), {
    card,
  });
  const steps = ok.steps.map(({ id }) => id);
  const jobs = Array.from({ length: count }, (_, n) => linesOfJob(card, steps, n)).flat();
  const own = linesOfJob(card, steps, count);
  const photos = Array.from({ length: pictures }, (_, n) => ({
    photo: { job: `job-${count}`, id: `photo-${n}`, what: 'pan', data: picture(n) },
  }));
  return {
    jobs: await written(join(folder, 'jobs.gz'), jobs),
    photos: await written(join(folder, 'photos.gz'), [...own, ...photos]),
  };
}

function linesOfJob(card, steps, n) {
  const job = `job-${n}`;
  const begun = Date.UTC(2000, 0, 1 + n);
  const at = (e) => new Date(begun + 60_000 * e).toISOString();
  const name = `${card.make} ${card.model}`;
  const events = Array.from({ length: each }, (_, e) => ({
    id: `${String(n).padStart(8, '0')}-0000-4000-8000-${String(e).padStart(12, '0')}`,
    time: at(e),
    seq: e + 1,
    day: at(e).slice(0, 10),
    ...(e === each - 1
      ? { kind: 'finish' }
      : e === 20
        ? { kind: 'note', text: `Noted that day, number ${n}: dark, no glitter.` }
        : { kind: 'done', step: steps[e % steps.length] }),
    job,
  }));
  const record = { id: job, name, started: at(0), card, bench: { system: 'metric' }, steps };
  return [{ job: record }, ...events.map((event) => ({ event }))];
}

/** A picture that doesn't compress. */
function picture(n) {
  const bytes = new Uint32Array(bytesOfPicture / 4);
  let seed = n + 1;
  for (let at = 0; at < bytes.length; at++)
    bytes[at] = seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
  return Buffer.concat([Buffer.from([255, 216]), Buffer.from(bytes.buffer)]).toString('base64');
}

/** Writes a gzipped and sealed backup of these lines. */
async function written(path, lines) {
  const counts = { settings: 0, cards: 0, jobs: 0, events: 0, photos: 0, besides: 0, asides: 0 };
  for (const line of lines) counts[`${Object.keys(line)[0]}s`]++;
  const all = [{ format: 'tidysump-backup', version: 2, made }, ...lines, { end: counts }];
  const body = gzipSync(all.map((line) => `${JSON.stringify(line)}\n`).join(''), { level: 1 });
  const digest = await digestOf(new Blob([body]), body.length);
  await writeFile(path, Buffer.concat([body, seal(digest, true)]));
  return path;
}

/** Runs in the page: the same records into a store of their own; resolves to the seconds. */
async function writePlainly({ card, count: many, each: events }) {
  const opening = indexedDB.open('plain');
  opening.onupgradeneeded = () => {
    opening.result.createObjectStore('jobs', { keyPath: 'id' });
    opening.result.createObjectStore('bundles', { keyPath: 'job' });
  };
  const db = await new Promise((resolve) => (opening.onsuccess = () => resolve(opening.result)));
  const began = performance.now();
  for (let first = 0; first < many; first += 100)
    await new Promise((resolve, reject) => {
      const tx = db.transaction(['jobs', 'bundles'], 'readwrite', { durability: 'strict' });
      tx.oncomplete = resolve;
      tx.onabort = () => reject(tx.error);
      for (let n = first; n < first + 100; n++) {
        const job = `job-${n}`;
        const list = Array.from({ length: events }, (_, e) => ({
          id: `${String(n).padStart(8, '0')}-0000-4000-8000-${String(e).padStart(12, '0')}`,
          time: new Date(Date.UTC(2000, 0, 1 + n) + 60_000 * e).toISOString(),
          kind: 'done',
          step: 'identify',
        }));
        tx.objectStore('jobs').put({ id: job, name: 'Tessaly Corda 570', card, bench: {} });
        tx.objectStore('bundles').put({ job, events: list });
      }
    });
  const seconds = (performance.now() - began) / 1000;
  db.close();
  indexedDB.deleteDatabase('plain');
  return seconds;
}
