// The page of a manual, as a person pastes it.
import { readFileSync } from 'node:fs';
import { tapAt, tapFound } from './finger.js';
import { goTo } from './job-page.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { field, tap } from './person.js';
import { words } from './words.js';

const root = new URL('../../../testdata/pages/', import.meta.url);

/** A page of testdata/pages, such as 'en/11-service-information'. */
export const pageOf = (name) => JSON.parse(readFileSync(new URL(`${name}.json`, root), 'utf8'));

/** A table whose head names two models. */
export const twoModels = `PLAINFORD                                                        3-4
                                HERON 320            HERON 520
Engine oil, filter changed      1.6 L                2.7 L
Engine oil, filter stays        1.5 L                2.4 L
Engine oil grade                SAE 10W-30           SAE 20W-50
Oil drain plug                  24 N·m               43 N·m
Spin-on oil filter              16 N·m               19 N·m
Change oil every                5,000 km             12,000 km`;

/** Opens the screen with nothing pasted yet. */
export async function freshManual(page, address = '#/manual') {
  await goTo(page, address);
  await page.waitForSelector('#page-text, .page-text', { timeout: patience() }); // what was kept is read
  const away = `::-p-aria([name="${words('manual.remove')}"])`;
  while (await page.$(away)) {
    const before = (await page.$$('.page-text')).length;
    await tap(page, words('manual.remove'));
    await page.waitForFunction(
      (n) => document.querySelectorAll('.page-text').length < n,
      { polling, timeout: patience() },
      before,
    );
  }
}

/** Types a text into the field in one go, and has it read. */
export async function giveText(page, text) {
  const area = await field(page, words('manual.text'));
  await area.evaluate((element, value) => (element.value = value), text);
  await tap(page, words('manual.read-it'));
  await page.waitForSelector('.page-text', { timeout: patience() });
}

/** Takes all that is sure. */
export async function takeSure(page) {
  const isThere = (toPlan, there) => {
    const said = document.querySelector('.actions .main')?.textContent.trim();
    return (said !== undefined && said !== toPlan) === there;
  };
  const options = { polling, timeout: patience() };
  await page.waitForFunction(isThere, options, words('manual.to-plan'), true);
  await tapAt(page, '.actions .main');
  await page.waitForFunction(isThere, options, words('manual.to-plan'), false);
}

/** Leaves out whatever is asked about, and says that the likeliest layout is the bike's. */
export async function leaveAll(page) {
  // Without a handle on what is left: a driver would hold it, and all that hung on it.
  const leaveOne = (leave) => {
    const asked = document.querySelector('.question h2');
    const buttons = [...document.querySelectorAll('.question button')];
    const named = buttons.find((button) => button.textContent.trim() === leave);
    (named ?? document.querySelector('.question .choices button'))?.click();
    return asked?.textContent;
  };
  for (;;) {
    const before = await page.evaluate(leaveOne, words('manual.leave'));
    if (before === undefined) return;
    await page.waitForFunction(
      (said) => document.querySelector('.question h2')?.textContent !== said,
      { polling, timeout: patience() },
      before,
    );
  }
}

/** Taps a word of the page's text. */
export async function tapWord(page, text) {
  const named = (word) =>
    [...document.querySelectorAll('.page-text [data-from]')].find(
      (one) => one.textContent.trim() === word,
    );
  const find = (timeout) => page.waitForFunction(named, { polling, timeout }, text);
  await tapFound(page, find, text);
}
