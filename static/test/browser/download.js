import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { tap } from './person.js';

/** Taps the button of that name, which saves a file; resolves to {path, name, text}. */
export async function download(page, folder, button) {
  const devtools = await page.createCDPSession();
  await devtools.send('Browser.setDownloadBehavior', {
    behavior: 'allow',
    downloadPath: folder,
    eventsEnabled: true,
  });
  const names = new Map();
  const ended = new Promise((resolve) => {
    devtools.on('Browser.downloadWillBegin', (e) => names.set(e.guid, e.suggestedFilename));
    devtools.on('Browser.downloadProgress', (e) => {
      if (e.state === 'completed') resolve(names.get(e.guid));
    });
  });
  await tap(page, button);
  const name = await ended;
  const path = join(folder, name);
  return { path, name, text: await readFile(path, 'utf8') };
}
