// Backups as a person makes and restores them; erasing everything; the reminder.
import assert from 'node:assert/strict';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { backUp, chooseBackup, restoreFrom } from './backup-page.js';
import { openReady, ownCard, packOf, paste, keep as keepCards } from './cards-page.js';
import { downloaded } from './download.js';
import { halves } from './exif.js';
import { goTo, plant, startJob, stored, tapDone } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { untilState } from './page.js';
import { held } from './held.js';
import { keepPicture, limitStorage, noisy, siteKept } from './photos-page.js';
import { choose, seen, tap, tapText, type, untilSeen } from './person.js';
import { dayWords, sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

/** A phone with a job, a photo and an own card. */
async function filled(t, before) {
  const site = await openReady(t, before);
  await startJob(site.page, bike);
  await keepPicture(t, site.page, await halves(site.page, 400, 200), 'plug');
  await tapDone(site.page);
  await untilSeen(site.page, words('step.lay-out'));
  await paste(site.page, packOf(ownCard('heron', 'Heron 500')));
  await keepCards(site.page, 1);
  return site;
}

test('a backup of one phone makes another like it, photos and all; the jobs go on there', async (t) => {
  const one = await filled(t);
  await goTo(one.page, '#/keep');
  await untilSeen(one.page, words('keep.never'));
  const file = await backUp(t, one.page);
  assert.match(file.name, /^tidysump-backup-\d{4}-\d\d-\d\d\.jsonl\.gz$/);
  await untilSeen(one.page, words('keep.last', { date: dayWords(new Date()) }));
  const want = await held(one.page);
  assert.equal(want.photos.length, 1);

  const two = await openReady(t);
  await chooseBackup(two.page, file.path);
  await untilSeen(two.page, words('restore.rule'));
  assert.deepEqual((await held(two.page)).jobs, [], 'nothing is changed before it is said');
  await tap(two.page, words('restore.do'));
  await untilSeen(two.page, words('restore.done'));
  assert.deepEqual(await held(two.page), want);
  await goTo(two.page, '#/bikes');
  await tapText(two.page, words('bikes.resume'));
  await untilSeen(two.page, words('step.lay-out'));

  await chooseBackup(two.page, file.path);
  await untilSeen(two.page, words('restore.nothing-new'));
  await tap(two.page, words('restore.leave'));
  await untilSeen(two.page, words('keep.why'));
  for (const { complaints } of [one, two]) assert.deepEqual(complaints, []);
});

test('a file that is damaged, cut, newer or something else changes nothing and is told in one sentence', async (t) => {
  const { page } = await filled(t);
  const { path } = await backUp(t, page);
  const whole = await readFile(path);
  const flipped = Buffer.from(whole);
  flipped[whole.length >> 1] ^= 1;
  const before = await held(page);
  const newer = '{"format":"tidysump-backup","version":4,"made":"2030-01-01T00:00:00.000Z"}\n';
  for (const [bytes, word] of [
    [flipped, 'restore.damaged'],
    [whole.subarray(0, whole.length - 1), 'restore.damaged'],
    [whole.subarray(0, 500), 'restore.damaged'],
    [newer, 'restore.newer'],
    ['PK something', 'restore.not-one'],
  ]) {
    const bad = join(await temporaryFolder(t), 'bad');
    await writeFile(bad, bytes);
    await chooseBackup(page, bad);
    await untilSeen(page, words(word));
    assert.deepEqual(await held(page), before);
  }
});

test('a phone that shares text only gets a text file, which restores as well', async (t) => {
  const { page } = await filled(t, (fresh) => fresh.evaluateOnNewDocument(shareTextOnly));
  await goTo(page, '#/keep');
  await tap(page, words('keep.make'));
  await tap(page, words('keep.share'));
  await untilSeen(page, words('keep.shared'));
  const [name, text] = await page.evaluate(() => globalThis.given);
  assert.match(name, /\.txt$/);
  const want = await held(page);
  const path = join(await temporaryFolder(t), name);
  await writeFile(path, text);
  const two = await openReady(t);
  await restoreFrom(two.page, path);
  assert.deepEqual(await held(two.page), want);
});

/** Runs in the page before anything else: a phone that shares plain text files. */
function shareTextOnly() {
  navigator.canShare = ({ files }) => files.every(({ type }) => type === 'text/plain');
  navigator.share = async ({ files: [file] }) => {
    globalThis.given = [file.name, await file.text()];
  };
}

test('a restore for which there is no room loses nothing, and ends when there is', async (t) => {
  const one = await filled(t);
  const noise = await noisy(one.page);
  await goTo(one.page, `#/job/${(await stored(one.page, 'jobs'))[0].id}/step/look-oil`);
  const room = (await siteKept(one.page)) + 700_000; // for the site, a job and a small picture
  // The browser may take the room to be as it was before the site filled it: the pictures
  // alone must be more.
  const pictured = async () =>
    (await stored(one.page, 'photos')).reduce((sum, { bytes }) => sum + bytes, 0);
  while ((await pictured()) < room) await keepPicture(t, one.page, noise, 'pan');
  const { path } = await backUp(t, one.page);
  const want = await held(one.page);

  let lift;
  const two = await openReady(t, async (page, url) => {
    lift = await limitStorage(page, url, room);
  });
  await startJob(two.page, bike);
  await keepPicture(t, two.page, await halves(two.page, 40, 20), 'seal');
  const [own] = await stored(two.page, 'jobs');
  await chooseBackup(two.page, path);
  await tap(two.page, words('restore.do'));
  await untilSeen(two.page, words('restore.full'));
  const partly = await held(two.page);
  assert.ok(partly.jobs.some(({ id }) => id === own.id));
  assert.ok(partly.photos.some(({ job }) => job === own.id));
  assert.ok(partly.photos.length < want.photos.length + 1);
  await lift();
  await restoreFrom(two.page, path);
  assert.equal((await held(two.page)).photos.length, want.photos.length + 1);
});

test('everything is erased only when the word is typed; the app works on without a network', async (t) => {
  const { page, server } = await filled(t);
  await untilState(page, 'ready');
  await goTo(page, '#/settings');
  await choose(page, words('settings.theme.dark'));
  await goTo(page, '#/keep/erase');
  const erase = await page.waitForSelector(
    `::-p-aria([name="${words('erase.do')}"][role="button"])`,
  );
  const disabled = () => erase.evaluate((button) => button.disabled);
  await type(page, words('erase.label', { word: words('erase.word') }), 'era');
  assert.ok(await disabled());
  await page.keyboard.press('Enter');
  assert.equal((await stored(page, 'jobs')).length, 1, 'not by Enter either');
  await type(
    page,
    words('erase.label', { word: words('erase.word') }),
    ` ${words('erase.word').toUpperCase()}`,
  );
  assert.ok(!(await disabled()));
  await server.stop();
  await Promise.all([page.waitForNavigation(), tap(page, words('erase.do'))]);
  await untilSeen(page, words('bikes.title'));
  await untilSeen(page, bike);
  const empty = { photos: [], jobs: [], events: [], cards: [], lines: [] };
  assert.deepEqual(await held(page), empty);
  assert.equal(await page.evaluate(() => document.documentElement.dataset.theme), 'auto');
  await startJob(page, bike);
  await untilSeen(page, words('step.identify', { bike }).slice(0, 8));
});

/** A finished job, of that many days ago. */
const finished = (id, days) => {
  const at = new Date(Date.now() - days * 86_400_000).toISOString();
  return {
    id,
    name: bike,
    started: at,
    card,
    bench: { system: 'metric' },
    summary: { finished: at, done: 3, steps: 38 },
  };
};

test('the record reminds of a backup when much is unsaved; put off, it is quiet; backed up, too', async (t) => {
  const { page } = await openReady(t);
  for (const n of [1, 2]) await plant(page, finished(`j${n}`, n));
  await goTo(page, '#/record');
  await untilSeen(page, bike);
  assert.ok(!(await seen(page)).includes(words('keep.unsaved', { count: 2 })));
  await plant(page, finished('j3', 3));
  await goTo(page, '#/record');
  await untilSeen(page, words('keep.unsaved', { count: 3 }));
  await tap(page, words('remind.later'));
  await goTo(page, '#/record');
  await untilSeen(page, bike);
  assert.ok(!(await seen(page)).includes(words('keep.unsaved', { count: 3 })));

  await goTo(page, '#/keep');
  await untilSeen(page, words('keep.unsaved', { count: 3 }));
  await backUp(t, page);
  await untilSeen(page, words('keep.all-saved'));
});

test('a backup is made, saved and restored by keyboard alone', async (t) => {
  const { page } = await openReady(t);
  await plant(page, finished('j1', 1));
  await goTo(page, '#/keep');
  const press = async (selector) => {
    for (let n = 0; n < 40; n++) {
      await page.keyboard.press('Tab');
      if (await page.evaluate((s) => document.activeElement.matches(s), selector)) return;
    }
    assert.fail(`${selector} is not reached`);
  };
  await press('section button');
  await page.keyboard.press('Enter');
  await untilSeen(page, words('keep.save'));
  const arrived = await downloaded(page, await temporaryFolder(t));
  await press('section .entry button');
  await page.keyboard.press('Enter');
  await arrived();
  await press('#backup-file');
});
