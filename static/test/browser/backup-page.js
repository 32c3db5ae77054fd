// Backups as a person makes and restores them.
import { downloaded } from './download.js';
import { goTo } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { tap, untilSeen } from './person.js';
import { words } from './words.js';

/** Makes a backup and saves it; resolves to {path, name}. */
export async function backUp(t, page) {
  await goTo(page, '#/keep');
  await tap(page, words('keep.make'));
  await untilSeen(page, words('keep.save'));
  const arrived = await downloaded(page, await temporaryFolder(t));
  await tap(page, words('keep.save'));
  await untilSeen(page, words('keep.saved'));
  return arrived();
}

/** Chooses a file to be restored. */
export async function chooseBackup(page, path) {
  await goTo(page, '#/keep');
  const input = await page.waitForSelector('#backup-file');
  await input.uploadFile(path);
}

/** Restores a file of which all comes in. */
export async function restoreFrom(page, path) {
  await chooseBackup(page, path);
  await untilSeen(page, words('restore.rule'));
  await tap(page, words('restore.do'));
  await untilSeen(page, words('restore.done'));
}
