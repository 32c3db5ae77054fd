// Several pages of a manual, one after the other: which says what, and what they disagree in.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo, stored } from './job-page.js';
import { freshManual, giveText, leaveAll, takeSure } from './manual-page.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import { patience } from './patience.js';
import { heading, seen, tap, untilSeen } from './person.js';
import { words } from './words.js';

const first = `PLAINFORD HERON 320
Engine oil with filter replacement ............ 1.6 L
Oil drain bolt, M12 x 1.5 ............. 25 N·m`;
const second = `PLAINFORD HERON 320
Engine oil with filter replacement ............ 1.8 L
Filter: spin-on, 17 N·m`;
const ofOther = `ORRINSHAW PIKE 500
Oil drain bolt, M12 x 1.5 ............. 20 N·m`;

const untilPages = (page, count) =>
  page.waitForFunction(
    (n) => document.querySelectorAll('.page-text').length === n,
    { polling, timeout: patience() },
    count,
  );

/** Another page's text comes in. */
async function add(page, text) {
  const before = (await page.$$('.page-text')).length;
  await tap(page, words('manual.another'));
  await page.waitForSelector('#page-text', { timeout: patience() });
  await giveText(page, text);
  await untilPages(page, before + 1);
}

const pageName = (nth, count) => words('manual.page.nth', { nth, count });
const take = (value) => words('manual.take-one', { value: value.replace(' ', '\u00a0') });
const plain = (text) => text.replace(/\s+/g, ' ');

/** What the question on the screen says, once it holds a text. */
const untilAsked = (page, text) =>
  page.waitForFunction(
    (want) => document.querySelector('.question')?.innerText.replace(/\s+/g, ' ').includes(want),
    { polling, timeout: patience() },
    plain(text),
  );

const asked = (page) => page.$eval('.question', (question) => question.innerText).then(plain);

test('what two pages say differently is asked with both quotes, whether one is taken or not', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, first);
  await add(page, second);
  const sure = await page.$eval('.plate', (plate) => plate.innerText);
  for (const figure of ['1.6', '1.8']) assert.ok(!sure.includes(figure), `${figure} is sure`);
  await takeSure(page);
  const both = [pageName(1, 2), 'replacement ............ 1.6 L', pageName(2, 2), '1.8 L'];
  await untilAsked(page, take('1.8 L'));
  for (const part of both) assert.ok((await asked(page)).includes(plain(part)), await asked(page));
  await tap(page, take('1.6 L'));
  await page.waitForFunction(
    (text) => !document.querySelector('.question')?.textContent.includes(text),
    { polling, timeout: patience() },
    take('1.8 L'),
  );

  await add(page, 'Engine oil with filter replacement 1.9 L');
  await untilAsked(page, take('1.9 L'));
  for (const part of [pageName(1, 3), take('1.6 L'), pageName(3, 3)])
    assert.ok((await asked(page)).includes(plain(part)), await asked(page));
  await tap(page, take('1.9 L'));
  await page.waitForFunction(
    (text) => !document.querySelector('.question')?.textContent.includes(text),
    { polling, timeout: patience() },
    take('1.9 L'),
  );
  await leaveAll(page);
  await tap(page, words('manual.to-plan'));
  await untilSeen(page, words('plan.start'));
  const [{ card }] = await stored(page, 'cards');
  assert.equal(card.circuits[0].withFilter.value, 1.9);
  assert.deepEqual(complaints, []);
});

test('pages beside a card that says otherwise: the words of all, and the card is kept at one tap', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, first);
  await takeSure(page);
  await leaveAll(page);
  await tap(page, words('manual.to-plan'));
  await untilSeen(page, words('plan.start'));
  const [{ key }] = await stored(page, 'cards');
  await freshManual(page, `#/manual/${key}`);
  await giveText(page, 'Engine oil with filter replacement ............ 1.8 L');
  await untilAsked(page, take('1.8 L'));
  for (const part of [words('manual.in-card'), '1.6 L', words('manual.in-page'), '1.8 L'])
    assert.ok((await asked(page)).includes(plain(part)), await asked(page));
  await add(page, 'Engine oil, filter changed too: 1.8 L');
  await untilAsked(page, pageName(2, 2));
  for (const part of [words('manual.in-card'), '1.6 L', pageName(1, 2), pageName(2, 2)])
    assert.ok((await asked(page)).includes(plain(part)), await asked(page));
  await tap(page, words('manual.keep'));
  await untilSeen(page, words('manual.left'));
  await page.waitForFunction(() => !document.querySelector('.question'), {
    polling,
    timeout: patience(),
  });
  assert.deepEqual(complaints, []);
});

test('pages of two bikes are told apart; a page that is taken away is brought back', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, first);
  await add(page, ofOther);
  await untilSeen(page, words('manual.models'));
  for (const name of ['Heron 320', 'Pike 500'])
    assert.ok(await page.$(`::-p-aria([name="${name}"][role="radio"])`), `${name} may be it`);
  const away = await page.$$(`::-p-aria([name="${words('manual.remove')}"])`);
  assert.equal(away.length, 2, 'each page can be taken away');
  await away[1].evaluate((button) => button.click()); // wherever it stands
  await untilPages(page, 1);
  await untilSeen(page, words('manual.removed'));
  assert.equal(await heading(page), 'Plainford Heron 320');
  await tap(page, words('manual.bring-back'));
  await untilPages(page, 2);
  await untilSeen(page, words('manual.models'));
  assert.ok(!(await seen(page)).includes(words('manual.removed')));
  assert.deepEqual(complaints, []);
});

test('the same page twice is one; what another app shares and is no text is told beside the pages', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, first);
  await tap(page, words('manual.another'));
  await page.waitForSelector('#page-text', { timeout: patience() });
  const area = await page.$('#page-text');
  await area.evaluate((field, text) => (field.value = text), ` ${first}\n`);
  await tap(page, words('manual.read-it'));
  await untilSeen(page, words('manual.again'));
  await tap(page, words('manual.back'));
  await untilPages(page, 1);
  await page.evaluate(async () => {
    const body = new FormData();
    body.append('pages', new File(['%PDF-1.7 \0\0'], 'a.txt', { type: 'text/plain' }));
    await fetch('/share', { method: 'POST', body });
  });
  await goTo(page, '#/bikes');
  await goTo(page, '#/manual?shared');
  await untilSeen(page, words('manual.is-pdf'));
  await untilPages(page, 1);
  assert.deepEqual(complaints, []);
});

test('a text that says nothing here is told so, and in which languages pages are read', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, 'Olej silnikowy z wymianą filtra: 1,6 l\nKorek spustowy oleju: 25 N·m');
  await untilSeen(page, words('manual.nothing'));
  await untilSeen(page, 'English, French, German');
  const main = await page.$eval('.actions .main', (button) => button.textContent.trim());
  assert.equal(main, words('manual.another'), 'the next page is what to do');
  await freshManual(page);
  await giveText(page, 'See you on Saturday, I will bring two salads and the bread for all of us.');
  await untilSeen(page, words('manual.nothing.do'));
  assert.ok(!(await seen(page)).includes('English, French, German'), 'its language is read');
  assert.deepEqual(complaints, []);
});
