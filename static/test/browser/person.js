// What a person does at the page: reads, taps, types. Things are found by what
// they are called, never by how they are styled.
import { polling } from './page.js';
import { patience } from './patience.js';
import { words } from './words.js';

/** What stands on the screen, with plain spaces, and without the marks that keep a value's own direction. */
export const seen = (page) =>
  page.evaluate(() => document.body.innerText.replace(/\s+/g, ' ').replace(/[\u2066-\u2069]/g, ''));

/** Waits until a text, or something that fits a pattern, stands on the screen. */
export async function untilSeen(page, text, timeout = patience()) {
  const plain = typeof text === 'string';
  const source = (plain ? text : text.source).replace(/[\u2066-\u2069]/g, '');
  const stands = (want, isPlain) => {
    const all = document.body.innerText.replace(/\s+/g, ' ').replace(/[\u2066-\u2069]/g, '');
    return isPlain ? all.includes(want) : new RegExp(want).test(all);
  };
  try {
    await page.waitForFunction(stands, { polling, timeout }, source, plain);
  } catch {
    throw new Error(`"${source}" does not appear; there is: ${await seen(page)}`);
  }
}

/** Waits for a thing and brings it where a finger reaches it, clear of the bars. */
async function reach(page, selector) {
  const thing = await page.waitForSelector(selector, { visible: true, timeout: patience() });
  await thing.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  return thing;
}

/** Taps a thing; one that was just drawn anew is looked for again, as a person would. */
async function tapThing(page, selector) {
  for (let tries = 3; ; tries--) {
    try {
      return await (await reach(page, selector)).click();
    } catch (error) {
      if (!tries || !error.message.includes('detached')) throw error;
    }
  }
}

/** Taps what has that role and that whole name. */
export const tap = (page, name, role = 'button') =>
  tapThing(page, `::-p-aria([name="${name}"][role="${role}"])`);

/** Taps the innermost thing that holds the text. */
export const tapText = (page, text) => tapThing(page, `::-p-text(${text})`);

/** Chooses one of several, by the words beside it. */
export async function choose(page, text) {
  const find = (want) =>
    [...document.querySelectorAll('label')].find((l) => l.textContent.trim() === want);
  const label = (
    await page.waitForFunction(find, { polling, timeout: patience() }, text)
  ).asElement();
  await label.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  await label.click();
}

/** The field whose label begins with the text. */
export async function field(page, label) {
  const find = (text) =>
    [...document.querySelectorAll('input, textarea')].find(({ labels }) =>
      [...labels].some((l) => l.textContent.trim().startsWith(text)),
    );
  const handle = await page.waitForFunction(find, { polling, timeout: patience() }, label);
  return handle.asElement();
}

/** Types into a field, in place of what it held. */
export async function type(page, label, text) {
  const input = await field(page, label);
  await input.evaluate(
    (element) => (element.scrollIntoView({ block: 'center' }), element.select()),
  );
  await input.click({ count: 3 });
  await input.type(text);
}

/** What a field holds. */
export const typed = async (page, label) => (await field(page, label)).evaluate((i) => i.value);

/** Enters a reading and keeps it. */
export async function enter(page, label, text) {
  await type(page, label, text);
  await tap(page, words('job.keep'));
}

/** What is told as an alert: that the store takes long, too, while it does. */
export const alerts = (page) =>
  page.$$eval('[role=alert]', (all) => all.map((alert) => alert.innerText));

/** The heading of the screen. */
export const heading = (page) =>
  page.evaluate(() => document.querySelector('h1').textContent.replace(/\s+/g, ' ').trim());

/** What stands under the heading `title`, to the end of its article or section. */
export const under = (page, title) =>
  page.evaluate((text) => {
    const all = [...document.querySelectorAll('h2, h3')];
    const found = all.find((h) => h.textContent.replace(/\s+/g, ' ').trim() === text);
    return found?.closest('article, section').innerText.replace(/\s+/g, ' ');
  }, title);

/** Answers a question that has a list of answers, by the words of both. */
export async function answer(page, label, text) {
  const marks = /[\u2066-\u2069]/g;
  const wanted = [label, text].map((said) => said.replace(marks, ''));
  const find = (want, one) => {
    const plain = (part) => part.textContent.replace(/[\u2066-\u2069]/g, '').trim();
    for (const list of document.querySelectorAll('select')) {
      const option = [...list.options].find((o) => plain(o) === one); // some come late
      if (option && [...list.labels].some((l) => plain(l) === want)) return [list, option.value];
    }
    return undefined;
  };
  const options = { polling, timeout: patience() };
  const found = await page.waitForFunction(find, options, ...wanted);
  const [list, value] = await Promise.all(
    [0, 1].map((n) => found.evaluateHandle((pair, at) => pair[at], n)),
  );
  await list.asElement().select(await value.jsonValue());
}
