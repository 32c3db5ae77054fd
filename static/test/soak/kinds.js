// How a phone, or a part of it, dies. `kill` ends when it is dead; `again` brings the
// app back as a person would, at the address in it where it was.
import { setTimeout as pause } from 'node:timers/promises';
import { killBrowser } from '../browser/restart.js';

/** Kind of kill -> {kill, again}; what `goesOn` ends by itself what was under way. */
export const kinds = {
  browser: {
    kill: ({ browser }) => killBrowser(browser),
    again: async (phone, address) => {
      await phone.start();
      await phone.open(address);
    },
  },
  renderer: {
    kill: ({ page }) => crash(page),
    again: (phone, address) => phone.open(address),
  },
  window: {
    kill: ({ page }) => page.close(),
    again: (phone, address) => phone.open(address),
  },
  core: {
    goesOn: true,
    kill: ({ page }) => inWorkers(page, fail),
    again: () => {},
  },
  'core, in silence': {
    goesOn: true,
    kill: ({ page }) => inWorkers(page, () => close()),
    again: () => {},
  },
  'service worker': {
    goesOn: true,
    kill: async ({ page }) => {
      const devtools = await page.createCDPSession();
      await devtools.send('ServiceWorker.enable');
      await devtools.send('ServiceWorker.stopAllWorkers');
      await devtools.detach();
    },
    again: async ({ page }) => {
      await page.reload();
      await page.waitForSelector('h1');
    },
  },
};

/** Runs in a worker: an error that nobody catches. */
function fail() {
  setTimeout(() => {
    throw new Error('planted');
  });
}

/** Runs something in the page's workers; one that has just ended is as dead as it gets. */
const inWorkers = (page, what) =>
  Promise.all(page.workers().map((worker) => worker.evaluate(what).catch(() => {})));

/** Ends the process that draws a page; the browser lives on. */
async function crash(page) {
  const devtools = await page.createCDPSession();
  const crashed = new Promise((resolve) =>
    devtools.once('Inspector.targetCrashed', () => resolve(true)),
  );
  await devtools.send('Inspector.enable');
  // A page that is just being loaded anew may leave the process that was hit.
  do devtools.send('Page.crash').catch(() => {});
  while (!(await Promise.race([crashed, pause(500)])));
  await page.close(); // what waits for an answer of it is told that there will be none
}
