// What comes to the page of a manual is lost by nothing, and waits until it is decided.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo } from './job-page.js';
import { openBrowser, startServer } from './launch.js';
import { textSize } from './layout.js';
import { freshManual, giveText, takeSure } from './manual-page.js';
import { openSite, phone } from './open-site.js';
import { polling, untilState } from './page.js';
import { patience } from './patience.js';
import { seen, tap, untilSeen } from './person.js';
import { words } from './words.js';

const text = `PLAINFORD HERON 320
Engine oil with filter replacement ............ 1.6 L (1.7 US qt)
Oil drain bolt, M12 x 1.5 ............. 25 N·m
Tighten the oil drain bolt to 30 N·m.`;

const waits = words('bikes.pages-wait.of', { name: 'Plainford Heron 320', count: 1 });

const untilPages = (page, count) =>
  page.waitForFunction(
    (n) => document.querySelectorAll('.page-text').length === n,
    { polling, timeout: patience() },
    count,
  );

/** Shares a text, as the phone does for another app. */
const share = (page, shared) =>
  page.evaluate(async (value) => {
    const body = new FormData();
    body.set('text', value);
    await fetch('/share', { method: 'POST', body });
  }, shared);

/** Waits until nothing that was shared is left to be taken. */
const untilTaken = (page) =>
  page.waitForFunction(
    async () => !(await (await caches.open('shared-with-tidysump')).keys()).length,
    { polling, timeout: patience() },
  );

test('what is shared with the app closed and no network is taken once, and the first screen says that it waits', async (t) => {
  const server = await startServer(t);
  const browser = await openBrowser(t);
  const before = await browser.newPage();
  await before.goto(server.url);
  await untilState(before, 'ready');
  await server.stop();
  await share(before, text);
  await before.goto('about:blank');
  const page = await browser.newPage();
  await page.setViewport(phone);
  await page.goto(`${server.url}#/manual?shared`);
  await untilPages(page, 1);
  await untilTaken(page);
  assert.equal(await page.evaluate(() => location.hash), '#/manual');
  await page.reload();
  await untilPages(page, 1);
  assert.ok(!(await seen(page)).includes(words('manual.empty')), 'nothing new was shared');
  await share(page, text);
  await goTo(page, '#/bikes');
  await goTo(page, '#/manual?shared');
  await untilSeen(page, words('manual.again'));
  await untilPages(page, 1);
  await takeSure(page);
  await goTo(page, '#/bikes');
  await tap(page, waits, 'link');
  await page.waitForSelector('.question', { timeout: patience() });
  await tap(page, words('manual.remove'));
  await untilSeen(page, words('manual.removed'));
  await goTo(page, '#/bikes');
  await untilSeen(page, words('bikes.paste'));
  assert.ok(!(await seen(page)).includes(waits), 'nothing waits');
});

test('texts that come while one is read are pages too, and what is half typed stays', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await page.type('#page-text', 'half typed');
  await page.evaluate(
    (pages) => {
      for (const one of pages) {
        const dataTransfer = new DataTransfer();
        dataTransfer.setData('text/plain', one);
        const how = { dataTransfer, bubbles: true, cancelable: true };
        document.querySelector('main').dispatchEvent(new DragEvent('drop', how));
      }
    },
    [text, text, 'Oil filter cover bolts 12 N·m'],
  );
  await untilPages(page, 2);
  await tap(page, words('manual.another'));
  await page.waitForFunction(() => document.querySelector('#page-text').value === 'half typed', {
    polling,
    timeout: patience(),
  });
  assert.deepEqual(complaints, []);
});

test('in large text on a wide window nothing stands beside the page', async (t) => {
  const { page } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, text);
  await page.setViewport({ width: 740, height: 360 });
  const columns = () =>
    page.$$eval('.beside > div', (all) => new Set(all.map((one) => one.offsetLeft)).size);
  assert.equal(await columns(), 2);
  await textSize(page, 2);
  assert.equal(await columns(), 1);
});

test('of a text in one long line the words about the chosen one are shown, and the way back is where one was', async (t) => {
  const { page } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  const count = 400;
  await giveText(page, Array.from({ length: count }, (_, n) => `word${n}`).join(' '));
  await page.$eval('[data-from="0"]', (first) => first.parentElement.lastElementChild.click());
  await untilSeen(page, words('manual.saying'));
  const shown = () => page.$$eval('[aria-pressed]', (all) => all.map((b) => b.textContent.trim()));
  assert.ok((await shown()).length < count / 4);
  assert.equal((await shown()).at(-1), `word${count - 1}`);
  await tap(page, words('manual.back'));
  await page.waitForFunction(
    (name) => document.activeElement.textContent.trim() === name,
    { polling, timeout: patience() },
    words('manual.say'),
  );
});
