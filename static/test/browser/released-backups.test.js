// A backup that a released version wrote is restored into a new phone: each job opens
// there and goes on, and its record shows all that was written down.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { openReady } from './cards-page.js';
import { goTo, tapDone } from './job-page.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { seen, tap, untilSeen } from './person.js';
import { words } from './words.js';

// Each was made by the program of that version: four jobs with a note at every step, a
// part of them with photos, timers and a problem, which went all the way, and two half done.
const folder = fileURLToPath(new URL('../../../testdata/backups/', import.meta.url));

/** The jobs of a backup, each with its events. */
function jobsOf(bytes) {
  const lines = gunzipSync(bytes).toString().trimEnd().split('\n').map(JSON.parse);
  const events = lines.flatMap(({ event }) => event ?? []);
  return lines
    .flatMap(({ job }) => job ?? [])
    .map((job) => ({ ...job, events: events.filter((event) => event.job === job.id) }));
}

/** What the core makes of a job that the page has. */
const replayed = (page, { card, bench, steps, started, events }) =>
  page.evaluate((input) => globalThis.tidysump.core.call('replay', input), {
    card,
    bench,
    steps,
    started,
    events,
  });

const undoneIn = (events) =>
  new Set(events.filter(({ kind }) => kind === 'undo').map(({ of }) => of));

for (const name of readdirSync(folder))
  test(`a backup of ${name.replace('.jsonl.gz', '')} comes back: its jobs open, go on and show all`, async (t) => {
    const { page, complaints } = await openReady(t);
    await goTo(page, '#/keep');
    const input = await page.waitForSelector('#backup-file');
    await input.uploadFile(`${folder}${name}`);
    await tap(page, words('restore.do'));
    await untilSeen(page, words('restore.done'));

    const jobs = jobsOf(readFileSync(`${folder}${name}`));
    assert.equal(jobs.filter(isOpen).length, 2, 'two are half done');
    for (const job of jobs) {
      await showsAll(page, job);
      if (isOpen(job)) await goesOn(page, job);
    }
    assert.deepEqual(complaints, []);
  });

const isOpen = ({ events }) => !events.some(({ kind }) => kind === 'finish');

/** Its record shows every note, and every event counts for what it is. */
async function showsAll(page, job) {
  const undone = undoneIn(job.events);
  const told = job.events.filter(({ id, kind }) => kind !== 'undo' && !undone.has(id));
  const of = (kind) => told.filter((event) => event.kind === kind);
  await goTo(page, `#/record/${job.id}`);
  for (const { text } of of('note')) await untilSeen(page, text.replace(/\s+/g, ' '));
  const record = await seen(page);
  assert.equal(record.includes('A note that was taken back.'), false, job.id);
  for (const [kind, word] of [
    ['photo', 'record.photos'],
    ['problem', 'record.problems'],
  ])
    assert.equal(record.includes(words(word)), of(kind).length > 0, `${job.id}: ${kind}`);
  const { ok } = await replayed(page, job);
  // A job that holds its steps has done those; one of an earlier version goes on in
  // today's plan, where another may stand in the place of one, and the rest is told apart.
  const done = ok.done.length + (ok.elsewhere ?? []).length;
  assert.equal(done, of('done').length, job.id);
  if (job.steps)
    assert.deepEqual(
      ok.done.toSorted(),
      of('done')
        .map(({ step }) => step)
        .toSorted(),
      job.id,
    );
  assert.equal(ok.readings.length, of('reading').length, job.id);
}

/** The step that comes next is shown, and can be done. */
async function goesOn(page, job) {
  const { next } = (await replayed(page, job)).ok;
  await goTo(page, `#/job/${job.id}`);
  await page.waitForSelector(`#note-${next}`, { timeout: patience() });
  await tapDone(page);
  const left = (id) => !document.getElementById(`note-${id}`);
  await page.waitForFunction(left, { polling, timeout: patience() }, next);
}
