// The page in a browser that has nothing of what is newer than the oldest versions
// promised: what is listed in compat/exceptions.js is taken away, all of it at once.
import assert from 'node:assert/strict';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { gzipSync } from 'node:zlib';
import { absent } from '../compat/exceptions.js';
import { olderStyle } from '../compat/older-style.js';
import { promised } from '../compat/site.js';
import { theme, violations } from './check-screens.js';
import { downloaded } from './download.js';
import { exportEdition } from './editions.js';
import { halves } from './exif.js';
import { startFolderHost } from './folder-host.js';
import { goTo, startJob, stored } from './job-page.js';
import { doneTo, note } from './job-walk.js';
import { openBrowser, temporaryFolder } from './launch.js';
import { cutOff, staysAmiss, stickingOut } from './layout.js';
import { openPhones } from './open-phones.js';
import { phone } from './open-site.js';
import { untilState } from './page.js';
import { keepPicture } from './photos-page.js';
import { seen, tap, untilSeen } from './person.js';
import { phoneOf, screens } from './screens.js';
import { watch } from './watch.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');

/** Runs in the page, before it: takes away what stands at these ways through the data. */
function takeAway(ways) {
  for (const [, owner, member, value] of ways) {
    const name = member?.replace(/_static$/, '');
    if (!member) delete globalThis[owner];
    else if (/_static$/.test(member)) delete globalThis[owner]?.[name];
    else if (!value) delete globalThis[owner]?.prototype[name];
  }
  const make = globalThis.createImageBitmap;
  globalThis.createImageBitmap = async (source, options = {}) => {
    if (options.imageOrientation === 'from-image') throw new TypeError('taken away by the test');
    return make(source, options);
  };
}

/** Takes what only newer browsers heed out of the page's head and headers. */
async function withoutHints(t) {
  const folder = await exportEdition(t, async (sources) => {
    const path = join(sources, 'index.html');
    const page = await readFile(path, 'utf8');
    const hints = /\s*<(link rel="manifest"|meta name="(theme-color|viewport)")[^>]*>/g;
    await writeFile(path, page.replace(hints, ''));
  });
  const path = join(folder, 'headers.json');
  const headers = JSON.parse(await readFile(path, 'utf8'));
  for (const one of Object.values(headers)) {
    delete one['Permissions-Policy'];
    one['Cache-Control'] = one['Cache-Control'].replace(', immutable', '');
    one['Content-Security-Policy'] = one['Content-Security-Policy']
      .split('; ')
      .filter((directive) => !/trusted-types|^worker-src/.test(directive))
      .join('; ');
  }
  await writeFile(path, JSON.stringify(headers));
  return folder;
}

test('a job and its backup, where a browser has none of what is newer in scripts', async (t) => {
  const host = await startFolderHost(t, await withoutHints(t));
  const open = async () => {
    const page = await (await openBrowser(t)).newPage();
    await page.setViewport(phone);
    const complaints = await watch(page);
    await page.evaluateOnNewDocument(takeAway, absent);
    await page.goto(host.url);
    await untilState(page, 'ready');
    return { page, complaints };
  };
  const one = await open();
  const there = await one.page.evaluate(
    (ways) =>
      ways
        .filter(([, , member, value]) => !value && !/_event$/.test(member))
        .filter(([, owner, member]) =>
          member ? member in (globalThis[owner]?.prototype ?? {}) : owner in globalThis,
        )
        .map((way) => way.join('.')),
    absent,
  );
  assert.deepEqual(there, [], 'taken away');

  await startJob(one.page, `${card.make} ${card.model}`);
  await untilSeen(one.page, words('hands.film'));
  await note(one.page, 'threads ✓ dry');
  await keepPicture(t, one.page, await halves(one.page, 400, 200), 'plug');
  await doneTo(one.page, 1, 11);
  await one.page.reload();
  await untilSeen(one.page, words('job.step', { number: 11, steps: '' }).trim());
  const kept = await stored(one.page, 'events');
  assert.deepEqual(kept.map(({ kind }) => kind).sort(), [
    ...Array(10).fill('done'),
    'note',
    'photo',
  ]);

  await goTo(one.page, `#/cards/show/${card.id}`);
  await untilSeen(one.page, words('qr.cannot'));

  await goTo(one.page, '#/keep');
  await untilSeen(one.page, words('room.unknown'));
  await tap(one.page, words('keep.make'));
  await untilSeen(one.page, words('keep.save'));
  const arrived = await downloaded(one.page, await temporaryFolder(t));
  await tap(one.page, words('keep.save'));
  const file = await arrived();
  assert.match(file.name, /\.txt$/);

  const two = await open();
  const choose = async (path) => {
    await goTo(two.page, '#/keep');
    await (await two.page.waitForSelector('#backup-file')).uploadFile(path);
  };
  const zipped = join(await temporaryFolder(t), 'tidysump-backup.jsonl.gz');
  await writeFile(zipped, gzipSync(await readFile(file.path)));
  await choose(zipped);
  await untilSeen(two.page, words('restore.cannot-unzip'));
  await choose(file.path);
  await untilSeen(two.page, words('restore.rule'));
  await tap(two.page, words('restore.do'));
  await untilSeen(two.page, words('restore.done'));
  await goTo(two.page, '#/bikes');
  await untilSeen(two.page, words('bikes.resume'));
  // A page that is loaded again in a job doesn't need the bikes that were loaded early.
  for (const { complaints } of [one, two])
    assert.deepEqual(
      complaints.filter((text) => !text.includes('preloaded using link preload')),
      [],
    );
});

// One state of each screen, that with the most on it.
const looked = [
  ['bikes', 'bikes, oil due'],
  ['bike', 'plan, all opened'],
  ['job', 'step with readings'],
  ['job', 'step with the level dragged'],
  ['job', 'look with a stop'],
  ['record', 'record, one job'],
  ['sheet', 'sheet for the owner'],
  ['bench-sheet', 'bench sheet'],
  ['bill', 'bill, all opened'],
  ['bench', 'calculation: bottles'],
  ['cards', 'cards, two versions of one'],
  ['edit', 'editor: a card with doubts'],
  ['settings', 'settings'],
  ['keep', 'backup'],
  ['trouble', 'problem with questions'],
  ['aid', 'first aid for a burn'],
];

test('every screen is whole and can be read without what is newer in styles', async (t) => {
  const browsers = promised();
  const folder = await exportEdition(t, async (sources) => {
    for (const name of await readdir(sources, { recursive: true }))
      if (name.endsWith('.css')) {
        const path = join(sources, name);
        await writeFile(path, olderStyle(await readFile(path, 'utf8'), browsers));
      }
  });
  const { phone: phoneNamed, end } = await openPhones(['-site', join(folder, '../site.zip')]);
  t.after(end);
  for (const [screen, state] of looked)
    await t.test(state, async () => {
      const way = screens[screen][state];
      const page = await phoneNamed(phoneOf(way));
      await page.bringToFront();
      await page.setViewport(phone);
      await way(page);
      assert.ok((await seen(page)).length > 40, 'there is something');
      for (const look of [stickingOut, cutOff]) assert.deepEqual(await staysAmiss(page, look), []);
      for (const colours of ['light', 'dark']) {
        await theme(page, colours);
        assert.deepEqual(await violations(page, ['color-contrast']), [], colours);
      }
      await page.emulateMediaType('print'); // still in the dark
      const paper = await page.evaluate(
        () => getComputedStyle(document.documentElement).backgroundColor,
      );
      assert.equal(paper, 'rgb(255, 255, 255)', 'paper is white, and what stands on it dark');
      assert.deepEqual(await violations(page, ['color-contrast']), [], 'on paper');
      await page.emulateMediaType();
      await theme(page, 'light');
    });
});
