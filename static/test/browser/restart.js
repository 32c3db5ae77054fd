// The life of a phone: a first visit, starts from the home screen, a dead battery.
import assert from 'node:assert/strict';
import { launchChromium, openBrowser, startServer } from './launch.js';
import { untilState } from './page.js';
import { installErrors, watch } from './watch.js';

/** Visits the site once, so that everything is kept; ends server and browser. */
export async function visitOnce(t, profile) {
  const server = await startServer(t);
  const browser = await launchChromium(profile);
  t.after(() => browser.close());
  const page = await browser.newPage();
  const complaints = await watch(page);
  await page.goto(server.url);
  await untilState(page, 'ready');
  assert.deepEqual(await installErrors(page), []);
  assert.deepEqual(complaints, []);
  assert.equal(await server.stop(), 0);
  await browser.close();
  await assert.rejects(fetch(server.url), 'the server is gone');
  return server.url;
}

/** Starts the browser again with the same profile, from the home screen. */
export async function startAgain(t, profile, url) {
  const browser = await openBrowser(t, profile);
  const page = await browser.newPage();
  const complaints = await watch(page);
  await page.goto(`${url}?from=icon`);
  return { browser, page, complaints };
}

/** Ends the browser as an empty battery would. */
export async function killBrowser(browser) {
  const child = browser.process();
  const ended = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGKILL');
  await ended;
}
