// The job on the screen and in the store.
import { tapAt } from './finger.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { tap, tapText, untilSeen } from './person.js';
import { words } from './words.js';

const all = (store) =>
  new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const reading = opening.result.transaction(store).objectStore(store).getAll();
      reading.onsuccess = () => (opening.result.close(), resolve(reading.result));
      reading.onerror = () => reject(reading.error);
    };
  });

/**
 * Waits until the page has made its store: whoever opens it before makes an empty one. An
 * old browser, which doesn't say which stores there are, is asked too late for that.
 */
const untilStore = (page) =>
  page.waitForFunction(
    async () =>
      !indexedDB.databases ||
      (await indexedDB.databases()).some(({ name, version }) => name === 'tidysump' && version),
    { polling, timeout: patience() },
  );

/** All records of one of the store's lists: 'jobs' or 'events'. */
export const stored = (page, store) => page.evaluate(all, store);

/** Puts a job with its events into the store unseen by the page. */
export const plant = async (page, job, events = []) => {
  await untilStore(page);
  await page.evaluate(
    (record, list) =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('tidysump');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          // Older versions of the store have no log.
          const here = [...opening.result.objectStoreNames].filter((n) =>
            ['jobs', 'log', 'events'].includes(n),
          );
          const tx = opening.result.transaction(here, 'readwrite');
          const { id, bike, card, name, started, summary = {} } = record;
          tx.objectStore('jobs').put(record);
          if (here.includes('log'))
            tx.objectStore('log').put({ id, bike: bike ?? card?.id ?? '', name, started, summary });
          for (const event of list) tx.objectStore('events').put({ ...event, job: record.id });
          tx.oncomplete = () => (opening.result.close(), resolve());
          tx.onabort = () => reject(tx.error);
        };
      }),
    job,
    events,
  );
};

/** Puts records into one of the store's lists behind the page's back; settings as [key, value]. */
export const plantIn = async (page, list, ...records) => {
  await untilStore(page);
  await page.evaluate(
    (of, all) =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('tidysump');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const tx = opening.result.transaction(of, 'readwrite');
          for (const record of all)
            if (of === 'settings') tx.objectStore(of).put(record[1], record[0]);
            else tx.objectStore(of).put(record);
          tx.oncomplete = () => (opening.result.close(), resolve());
          tx.onabort = () => reject(tx.error);
        };
      }),
    list,
    records,
  );
};

/** Puts a setting into the store behind the page's back. */
export const plantSetting = (page, key, value) => plantIn(page, 'settings', [key, value]);

/** Opens the plan of a bike from the first screen and starts its job. */
export async function startJob(page, bike) {
  await tapText(page, bike);
  await tap(page, words('plan.start'));
  await untilStep(page, 1);
}

/** Waits until that step is on the screen. */
export const untilStep = (page, number, timeout) =>
  untilSeen(page, new RegExp(`${words('job.step', { number, steps: '\\d+' })}\\b`), timeout);

/** Waits until that step was left for another screen. */
export const untilPast = (page, id) =>
  page.waitForFunction(
    (step) => !location.hash.endsWith(`/step/${step}`),
    { polling, timeout: patience() },
    id,
  );

/** The plan that the page's core makes of a card. */
export async function planOf(page, card) {
  const plan = (c) => globalThis.tidysump.core.call('plan', { card: c });
  return (await page.evaluate(plan, card)).ok;
}

/** Waits until what is on the screen has stood there for long enough to be meant. */
export const untilReady = (page) =>
  page.waitForFunction(() => !document.querySelector('.step:not([data-ready])'), {
    polling,
    timeout: patience(),
  });

/** Taps the large button of a step; asked whether nothing was looked at, goes on all the same. */
export async function tapDone(page) {
  await tapAt(page, '.step[data-ready] .actions .main');
  if (await page.$('.actions.brake')) await goOn(page);
}

/** Goes on from a gate all the same. */
export async function goOn(page) {
  await untilReady(page);
  await tap(page, words('job.brake.on'));
}

/** Says that the step with that number is done, and waits for the one after it. */
export async function done(page, number) {
  await tapDone(page);
  await untilStep(page, number + 1);
}

/** Goes to a screen by its address, anew; waits until its heading has the focus. */
export async function goTo(page, address) {
  await page.waitForSelector('h1'); // a page that shows a screen listens to its address
  const here = await page.evaluate(() => location.hash);
  if (here === address) await goTo(page, '#/elsewhere');
  await page.evaluate((hash) => {
    document.activeElement?.blur();
    location.hash = hash;
  }, address);
  const arrived = () => document.activeElement?.tagName === 'H1';
  await page.waitForFunction(arrived, { polling, timeout: patience() });
}

/** From a step to all of them, by where the job stands. */
export async function openAllSteps(page) {
  await tapAt(page, '.head .all');
  await untilSeen(page, words('job.all-steps'));
}

/** Opens a step of the one job there is. */
export async function openStep(page, id) {
  const [job] = await stored(page, 'jobs');
  await goTo(page, `#/job/${job.id}/step/${id}`);
}

/** What the made-up phone of voices.js knows. */
export const phone = (page, key) => page.evaluate((k) => globalThis.phone[k], key);
