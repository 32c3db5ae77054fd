// A whole but hostile backup: everything in it that can be read comes in, every screen
// opens afterwards, and what can't be read is told and kept aside.
import assert from 'node:assert/strict';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { test } from 'node:test';
import { digestOf, seal } from '../../app/backup/seal.js';
import { backupOf, made } from '../backup-file.js';
import { goodJobs, hostileBackup } from '../hostile-backup.js';
import { openReady } from './cards-page.js';
import { chooseText } from './choose-file.js';
import { download } from './download.js';
import { goTo, startJob, stored, tapDone } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { staysAmiss } from './layout.js';
import { alerts, seen, tap, tapText, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');

test('after a hostile backup every job opens, its notes, sheet and bill, and the lists; my own job goes on', async (t) => {
  const { page, complaints } = await openReady(t);
  await startJob(page, `${card.make} ${card.model}`);
  await tapDone(page);
  await untilSeen(page, words('step.lay-out'));
  const [mine] = await stored(page, 'jobs');

  await goTo(page, '#/keep');
  await chooseText(page, '#backup-file', 'backup.txt', await hostileBackup(card));
  await untilSeen(page, words('restore.rule'));
  await tap(page, words('restore.do'));
  await untilSeen(page, words('restore.done-aside'));
  const ids = (await stored(page, 'jobs')).map(({ id }) => id);
  assert.deepEqual(ids.sort(), [...goodJobs, mine.id].sort());

  for (const id of ids)
    for (const address of ['job', 'record', 'sheet', 'bill']) {
      await goTo(page, `#/${address}/${encodeURIComponent(id)}`);
      const shown = await seen(page);
      assert.ok(shown.includes(card.make), `#/${address}/${id}: ${shown}`);
      assert.deepEqual(await staysAmiss(page, alerts), [], `#/${address}/${id}: ${shown}`);
    }
  await goTo(page, '#/record/behind');
  await untilSeen(page, 'came all the same');
  for (const address of ['bikes', 'record', 'cards', 'due', 'settings', 'keep']) {
    await goTo(page, `#/${address}`);
    assert.deepEqual(await staysAmiss(page, alerts), [], `#/${address}`);
  }
  const aside = await stored(page, 'aside');
  await untilSeen(page, words('aside.what', { count: aside.length }));
  const file = await download(page, await temporaryFolder(t), words('aside.save'));
  assert.equal(file.text.trimEnd().split('\n').length, aside.length);
  await goTo(page, '#/bikes');
  await tapText(page, words('bikes.resume'));
  await untilSeen(page, words('step.lay-out'));
  assert.deepEqual(complaints, []);
});

test('a small file that unpacks to a hundred million letters is refused in one sentence, and the page answers', async (t) => {
  const { page, complaints } = await openReady(t);
  const folder = await temporaryFolder(t);
  const head = `{"format":"tidysump-backup","version":2,"made":"${made}"}\n`;
  for (const [name, text, word] of [
    ['line', `{"event":"${'x'.repeat(100_000_000)}"}\n`, 'restore.line-too-long'],
    ['brackets', `${`${'['.repeat(999_000)}\n`.repeat(100)}`, 'restore.too-much-unread'],
  ]) {
    const body = gzipSync(head + text);
    const path = join(folder, name);
    await writeFile(
      path,
      Buffer.concat([body, seal(await digestOf(new Blob([body]), body.length), true)]),
    );
    await goTo(page, '#/keep');
    const input = await page.waitForSelector('#backup-file');
    await input.uploadFile(path);
    await untilSeen(page, words(word));
    await goTo(page, '#/bikes');
    await untilSeen(page, words('bikes.title'));
  }
  assert.deepEqual(complaints, []);
});

test('a file that is read can be stopped, and nothing was changed', async (t) => {
  const { page } = await openReady(t);
  const records = Array.from({ length: 60 }, (_, n) => `{"wheel":"${n}${'x'.repeat(200_000)}"}`);
  const text = await (await backupOf(records)).text();
  await goTo(page, '#/keep');
  await page.$eval(
    'main',
    (main, name) => {
      const press = () =>
        [...main.querySelectorAll('button')]
          .find(({ textContent }) => textContent.trim() === name)
          ?.click();
      new MutationObserver(press).observe(main, { childList: true, subtree: true });
    },
    words('restore.stop'),
  );
  await chooseText(page, '#backup-file', 'backup.txt', text);
  await untilSeen(page, words('restore.stopped'));
  assert.deepEqual(await stored(page, 'aside'), []);
});
