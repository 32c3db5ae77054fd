// What a number is follows from the unit and from what is believable, never from the
// language: of the phone, of the page, or of the keyboard.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo } from './job-page.js';
import { openBrowser, startServer } from './launch.js';
import { untilState } from './page.js';
import { tap, type, untilSeen } from './person.js';
import { setPhone } from './pseudo-site.js';
import { words } from './words.js';

const worked = (page) =>
  page.evaluate(() => document.querySelector('.worked').innerText.replace(/\s+/g, ' ').trim());

/** What is answered to a text that is typed. */
async function converted(page, text) {
  await goTo(page, '#/bench/convert');
  // What a page before left in the form is answered as soon as the form is there.
  if (await page.$('.worked h2')) await clear(page);
  await type(page, words('ask.convert.text'), text);
  await tap(page, words('bench.work'));
  await untilSeen(page, words('bench.worked'));
  const answer = await worked(page);
  await clear(page);
  return answer;
}

async function clear(page) {
  await tap(page, words('bench.clear'));
  await page.waitForFunction(() => !document.querySelector('.worked h2'));
}

test('numbers are read alike on phones of every language, in their digits too', async (t) => {
  const server = await startServer(t);
  const browser = await openBrowser(t);
  const read = [];
  for (const tag of ['en-US', 'de-DE', 'ar-EG', 'fa-IR', 'hi-IN']) {
    const page = await browser.newPage();
    await page.evaluateOnNewDocument(setPhone, tag);
    await page.goto(server.url);
    await untilState(page, 'ready');
    const answers = {};
    for (const text of ['1,234 mL', '1.5 L', '١٬٢٣٤ mL', '१.५ L', '۱٫۵\u200e L'])
      answers[text] = await converted(page, text);
    read.push(answers);
    await page.close();
  }
  for (const answers of read) assert.deepEqual(answers, read[0]);
  const [first] = read;
  assert.match(first['1,234 mL'], /1234/);
  assert.equal(first['१.५ L'], first['1.5 L']);
  assert.equal(first['۱٫۵\u200e L'], first['1.5 L']);
});
