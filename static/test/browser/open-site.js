import assert from 'node:assert/strict';
import { openBrowser, startServer } from './launch.js';
import { untilState } from './page.js';
import { hearGaps, watch } from './watch.js';

/** What the page is tried on first. */
export const phone = { width: 360, height: 740 };

/** A page of the site in a browser of its own; `before(page, url)` prepares the empty page. */
export async function openSite(t, before = () => {}) {
  const server = await startServer(t);
  const browser = await openBrowser(t);
  const page = await browser.newPage();
  await page.setViewport(phone);
  const complaints = await watch(page);
  const gaps = hearGaps(page);
  t.after(() => assert.deepEqual(gaps, [], 'sentences that miss a value'));
  await before(page, server.url);
  await page.goto(server.url);
  return { url: server.url, server, browser, page, complaints };
}

/** The same page, once all is kept on the phone and the server is gone. */
export async function openWithoutServer(t) {
  const { page, server } = await openSite(t);
  await untilState(page, 'ready');
  await server.stop();
  await page.reload();
  return page;
}
