// A job that the core can't work out is read as it stands, saved, and goes on; what came
// in differently stands beside what is here until the person decides.
import assert from 'node:assert/strict';
import { gunzipSync } from 'node:zlib';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { download } from './download.js';
import { halves } from './exif.js';
import { goTo, plant, plantIn, stored } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { besideJob, brokenJob, oddJob } from './odd-jobs.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import { keepPicture } from './photos-page.js';
import { heading, seen, tap, tapText, type, under, untilSeen } from './person.js';
import { sampleJobs } from './sample-jobs.js';
import { words } from './words.js';

const [[job, events]] = sampleJobs([]);
const written = 'Dark, no glitter.\nSmells of fuel a little.';

/** A site with jobs in its store. */
async function siteWith(t, ...jobs) {
  const site = await openSite(t);
  await untilState(site.page, 'ready');
  for (const [record, list] of jobs) await plant(site.page, record, list);
  return site;
}

const [broken] = brokenJob;

test('a job that cannot be worked out is a plain reading on every screen of it', async (t) => {
  const { page, complaints } = await siteWith(t, brokenJob);
  for (const screen of ['job', 'record', 'sheet', 'bill']) {
    await goTo(page, `#/${screen}/broken`);
    assert.equal(await heading(page), broken.name, screen);
    const text = await seen(page);
    for (const part of [
      words('plain.why'),
      words('event.done'),
      words('step.lay-out'),
      written.split('\n')[1],
    ])
      assert.ok(text.includes(part), `${screen}: ${part} in ${text}`);
    assert.ok(!text.includes(words('job.unknown')), screen);
  }
  assert.deepEqual(complaints, []);
});

test('it takes a note, which outlives the page, and a photo, and goes out as a file', async (t) => {
  const { page, complaints } = await siteWith(t, brokenJob);
  await goTo(page, '#/record/broken');
  await type(page, words('job.note'), 'begun');
  await untilSeen(page, words('draft.written'));
  await page.reload();
  await page.waitForFunction(() => document.querySelector('#plain-note')?.value === 'begun', {
    polling,
  });
  await type(page, words('job.note'), 'gone on with');
  await tap(page, words('job.note.save'));
  await untilSeen(page, words('job.note.kept'));
  assert.deepEqual(await stored(page, 'drafts'), []);
  await keepPicture(t, page, await halves(page, 40, 20));
  const kept = (await stored(page, 'events'))
    .filter(({ id }) => !id.startsWith('event-'))
    .map(({ kind, text, what }) => [kind, text ?? what]);
  assert.deepEqual(kept.sort(), [
    ['note', 'gone on with'],
    ['photo', 'other'],
  ]);
  const list = await under(page, words('plain.entries'));
  assert.ok(list.includes('gone on with'), list);

  const { path, name } = await download(page, await temporaryFolder(t), words('plain.save'));
  assert.equal(name, 'tidysump-A-name-of-its-own.txt');
  const bytes = readFileSync(path);
  const text = (bytes[0] === 0x1f ? gunzipSync(bytes) : bytes).toString();
  for (const part of [
    'tidysump-backup',
    'gone on with',
    'Smells of fuel',
    '"circuits":"none"',
    '"photo"',
  ])
    assert.ok(text.includes(part), part);
  assert.deepEqual(complaints, []);
});

test('without the core the record is read all the same, and says so', async (t) => {
  const { page } = await openSite(t, (empty) =>
    empty.evaluateOnNewDocument(() => {
      globalThis.Worker = class {
        constructor() {
          throw new Error('planted');
        }
      };
    }),
  );
  await untilState(page, 'ready');
  await plant(page, job, events);
  await goTo(page, '#/record/open-job');
  await untilSeen(page, words('finding.core-unavailable'));
  assert.equal(await heading(page), job.name);
  await untilSeen(page, 'Smells of fuel');
});

test('of an address without a job it is said that there is none', async (t) => {
  const { page } = await siteWith(t);
  for (const screen of ['job', 'record', 'sheet', 'bill']) {
    await goTo(page, `#/${screen}/none`);
    assert.equal(await heading(page), words('job.unknown'), screen);
  }
});

test('an entry of another kind, one that cannot be read and one of another version are shown', async (t) => {
  const { page, complaints } = await siteWith(t, oddJob);
  await goTo(page, '#/record/odd');
  await untilSeen(page, words('record.elsewhere'));
  assert.ok((await under(page, words('record.elsewhere'))).includes('polish-tank'));
  await tapText(page, words('plain.entries'));
  await untilSeen(page, words('event.other', { kind: 'polish' }));
  await untilSeen(page, 'until it shone');
  await untilSeen(page, words('finding.event-unread', { member: 'text' }));
  await goTo(page, '#/job/odd/step/lay-out');
  await untilSeen(page, words('job.see-record'));
  assert.deepEqual(complaints, []);
});

test('of two contents the person says which counts, and can take that back', async (t) => {
  const { page, complaints } = await siteWith(t, [job, events]);
  await plantIn(page, 'beside', ...besideJob(job.id));
  const notes = () => under(page, words('record.notes'));
  await goTo(page, '#/record/open-job');
  await untilSeen(page, words('record.disputed'));
  assert.match(await notes(), /no glitter/);
  const both = await under(page, words('record.disputed'));
  for (const text of [
    'no glitter',
    'Clear as water',
    words('dispute.here'),
    words('dispute.other'),
  ])
    assert.ok(both.includes(text), `${text} in ${both}`);
  await tapText(page, words('differs.what', { count: 1 }));
  const unlike = await under(page, words('record.other'));
  assert.match(unlike, /Torque.*29.*99/s, 'what differs of the card');

  await tap(page, words('dispute.choose'));
  await page.waitForFunction(
    (text) => document.querySelector('.remark')?.innerText.includes(text),
    { polling },
    'Clear as water',
  );
  await page.reload();
  await untilSeen(page, words('record.disputed'));
  assert.match(await notes(), /Clear as water/);
  await tap(page, words('dispute.back'));
  await page.waitForFunction(
    (text) => document.querySelector('.remark')?.innerText.includes(text),
    { polling },
    'no glitter',
  );
  assert.deepEqual(
    (await stored(page, 'events'))
      .filter(({ id }) => !id.startsWith('event-'))
      .map(({ kind }) => kind)
      .sort(),
    ['choose', 'undo'],
  );
  assert.deepEqual(complaints, []);
});
