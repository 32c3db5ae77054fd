import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { tap } from './person.js';

/** Taps the button of that name, which saves a file; resolves to {path, name, text}. */
export async function download(page, folder, button) {
  const arrived = await downloaded(page, folder);
  await tap(page, button);
  const { path, name } = await arrived();
  return { path, name, text: await readFile(path, 'utf8') };
}

/** Lets the page save files into a folder; resolves to what waits for one: {path, name}. */
export async function downloaded(page, folder) {
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
      if (e.state !== 'completed') return;
      const name = names.get(e.guid);
      resolve({ path: join(folder, name), name });
    });
  });
  return () => ended;
}
