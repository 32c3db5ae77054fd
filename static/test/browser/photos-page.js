// The photos of a job, on the screen and in the store.
import { join } from 'node:path';
import { writeFile } from 'node:fs/promises';
import { temporaryFolder } from './launch.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { chooseFrom, tapText, untilSeen } from './person.js';
import { words } from './words.js';

/** Chooses a picture from the phone at the step that is on the screen, as `what`. */
export async function choosePicture(t, page, bytes, what, name = 'picture.jpg') {
  const path = join(await temporaryFolder(t), name);
  await writeFile(path, bytes);
  const open = await page.$eval('details.take', (details) => details.open);
  if (!open) await tapText(page, words('photo.take'));
  if (what) await chooseFrom(page, 'select[id^="photo-what"]', what);
  const input = await page.waitForSelector('input[id^="photo-choose"]');
  await input.uploadFile(path);
}

/** Chooses a picture and waits until it is kept and shown. */
export async function keepPicture(t, page, bytes, what) {
  const count = () => page.$$eval('.photos img', (all) => all.length);
  const before = await count();
  await choosePicture(t, page, bytes, what);
  const more = (n) => document.querySelectorAll('.photos img').length > n;
  await page.waitForFunction(more, { polling, timeout: patience() }, before);
  await untilSeen(page, words('photo.kept'));
}

/** The pictures in the store: [{job, id, what, bytes, type, width, height, base64}]. */
export const pictures = (page) =>
  page.evaluate(async () => {
    const db = await new Promise((resolve, reject) => {
      const opening = indexedDB.open('tidysump');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const list = await new Promise((resolve, reject) => {
      const reading = db.transaction('photos').objectStore('photos').getAll();
      reading.onsuccess = () => resolve(reading.result);
      reading.onerror = () => reject(reading.error);
    });
    db.close();
    const shown = list.map(async ({ blob, ...photo }) => {
      const { width, height } = await createImageBitmap(blob);
      const bytes = new Uint8Array(await blob.arrayBuffer());
      const base64 = btoa(Array.from(bytes, (b) => String.fromCharCode(b)).join(''));
      return { ...photo, type: blob.type, width, height, base64 };
    });
    return Promise.all(shown);
  });

/** The colours of a picture at places given as shares of its width and height: [[r, g, b]]. */
export const coloursOf = (page, base64, places) =>
  page.evaluate(
    async (text, list) => {
      const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
      const picture = await createImageBitmap(new Blob([bytes]));
      const canvas = new OffscreenCanvas(picture.width, picture.height).getContext('2d', {
        willReadFrequently: true,
      });
      canvas.drawImage(picture, 0, 0);
      return list.map(([x, y]) => [
        ...canvas.getImageData(x * picture.width, y * picture.height, 1, 1).data.slice(0, 3),
      ]);
    },
    base64,
    places,
  );

/**
 * Lets the site of that URL store so many bytes in all; resolves to what lifts the
 * limit. It must be set before the site stores anything: Chromium remembers for a while
 * (about half a minute, from memory; after 31 s it knew better) how much room there was,
 * and so may let in as much again as the site took meanwhile.
 */
export async function limitStorage(page, url, quotaSize) {
  const devtools = await page.createCDPSession();
  const { origin } = new URL(url);
  await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize });
  return () => devtools.send('Storage.overrideQuotaForOrigin', { origin });
}

/** How many bytes the browser counts for what a page keeps of the site for offline use. */
export const siteKept = (page) =>
  page.evaluate(async () => {
    const { usageDetails } = await navigator.storage.estimate();
    return usageDetails.caches;
  });

/** A picture that stays large however it is made again. */
export async function noisy(page) {
  const base64 = await page.evaluate(() => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 1600, height: 1200 });
    const brush = canvas.getContext('2d');
    const grain = brush.createImageData(1600, 1200);
    for (let at = 0; at < grain.data.length; at += 65536)
      crypto.getRandomValues(grain.data.subarray(at, at + 65536));
    brush.putImageData(grain, 0, 0);
    return canvas.toDataURL('image/jpeg', 0.9).split(',')[1];
  });
  return Buffer.from(base64, 'base64');
}

/** Puts a picture into the store unseen by the page. */
export const plantPicture = (page, photo) =>
  page.evaluate(async (record) => {
    const canvas = new OffscreenCanvas(400, 300);
    canvas.getContext('2d').fillRect(50, 50, 300, 200);
    const blob = await canvas.convertToBlob({ type: 'image/jpeg' });
    const db = await new Promise((resolve, reject) => {
      const opening = indexedDB.open('tidysump');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    await new Promise((resolve, reject) => {
      const tx = db.transaction('photos', 'readwrite');
      tx.objectStore('photos').put({ ...record, blob, bytes: blob.size });
      tx.oncomplete = resolve;
      tx.onabort = () => reject(tx.error);
    });
    db.close();
  }, photo);
