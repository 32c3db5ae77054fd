import assert from 'node:assert/strict';
import { launchChromium, startServer } from './launch.js';
import { untilState } from './page.js';
import { phones } from './phones.js';
import { hearGaps } from './watch.js';

/**
 * A server and a browser with the phones of phones.js, each with a store of its own:
 * {phone, end}. `phone(name)` resolves to its page, which is made when it is first
 * asked for; `end` ends it all. The server gets `args`, and `always` runs in each page
 * before it, with what is to be given to it: [function, ...values].
 */
export async function openPhones(args = [], always = []) {
  const endings = [];
  const end = async () => {
    const wrong = [];
    for (const ending of endings.reverse())
      await Promise.resolve()
        .then(ending)
        .catch((error) => wrong.push(error)); // the others end all the same
    if (wrong.length) throw wrong[0];
  };
  const after = (ending) => endings.push(ending);
  try {
    const server = await startServer({ after }, ...args);
    const browser = await launchChromium();
    after(() => browser.close());
    const pages = new Map();
    const phone = (name) => {
      if (!pages.has(name))
        pages.set(name, open({ browser, url: server.url, after }, name, always));
      return pages.get(name);
    };
    return { phone, end };
  } catch (error) {
    await end();
    throw error;
  }
}

async function open({ browser, url, after }, name, always) {
  const { before = [], fill } = phones[name];
  const page = await (await browser.createBrowserContext()).newPage();
  const gaps = hearGaps(page);
  after(() => assert.deepEqual(gaps, [], 'sentences that miss a value'));
  if (always.length) await page.evaluateOnNewDocument(...always);
  for (const fn of before) await page.evaluateOnNewDocument(fn);
  await page.goto(url);
  await untilState(page, 'ready');
  if (!fill) return page;
  await fill(page);
  await page.reload();
  await page.waitForSelector('h1');
  return page;
}
