import { openBrowser, startServer } from './launch.js';
import { watch } from './watch.js';

/** A page of the site in a browser of its own; `before(page, url)` prepares the empty page. */
export async function openSite(t, before = () => {}) {
  const server = await startServer(t);
  const browser = await openBrowser(t);
  const page = await browser.newPage();
  await page.setViewport({ width: 360, height: 740 });
  const complaints = await watch(page);
  await before(page, server.url);
  await page.goto(server.url);
  return { url: server.url, server, browser, page, complaints };
}
