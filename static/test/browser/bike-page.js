// The bikes of a model, as a person tells them apart.
import { goTo } from './job-page.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { tap, type, untilSeen } from './person.js';
import { words } from './words.js';

/** Begins another bike of the card on the screen; resolves to its id. */
async function another(page) {
  const before = await page.evaluate(() => location.hash);
  await tap(page, `+ ${words('bike.another')}`);
  await page.waitForFunction((hash) => location.hash !== hash, { polling }, before);
  await untilSeen(page, words('plan.start'));
  return page.evaluate(() => location.hash.split('/').at(-1));
}

/** Waits until what lists show of the bikes holds that text. */
export const untilRow = (page, want) =>
  page.waitForFunction(
    (text) =>
      new Promise((resolve) => {
        const opening = indexedDB.open('tidysump');
        opening.onsuccess = () => {
          const reading = opening.result.transaction('bikes').objectStore('bikes').getAll();
          reading.onsuccess = () => {
            opening.result.close();
            resolve(JSON.stringify(reading.result).includes(text));
          };
        };
      }),
    { polling, timeout: patience() },
    want,
  );

/** Tells something of the bike whose details are on the screen. */
export async function tellOf(page, what, text) {
  await type(page, words(`details.tell.${what}`), text);
  await page.keyboard.press('Enter');
  await untilRow(page, text);
}

/** Begins a bike of which that is told, from the plan of its card; resolves to its id. */
export async function beginBike(page, card, told) {
  await goTo(page, `#/bike/${card}`);
  await untilSeen(page, words('plan.start'));
  const id = await another(page);
  await goTo(page, `#/details/${id}`);
  for (const [what, text] of Object.entries(told)) await tellOf(page, what, text);
  return id;
}
