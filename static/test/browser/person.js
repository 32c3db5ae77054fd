// What a person does at the page: reads, taps, types. Things are found by what
// they are called, never by how they are styled.
import { tapAt, tapFound } from './finger.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { words } from './words.js';

/** What stands on the screen, with plain spaces, and without the marks that keep a value's own direction. */
export const seen = (page) =>
  page.evaluate(() => document.body.innerText.replace(/\s+/g, ' ').replace(/[\u2066-\u2069]/g, ''));

/** Waits until the function, called in the page, gives something true, and resolves to a handle of it; complains of what there is instead. */
async function until(page, complaint, fn, args, timeout = patience()) {
  try {
    return await page.waitForFunction(fn, { polling, timeout }, ...args);
  } catch (cause) {
    throw new Error(`${complaint}; there is: ${await seen(page)}`, { cause });
  }
}

/** Waits until a text, or something that fits a pattern, stands on the screen. */
export async function untilSeen(page, text, timeout = patience()) {
  const plain = typeof text === 'string';
  const source = (plain ? text : text.source).replace(/[\u2066-\u2069]/g, '');
  const stands = (want, isPlain) => {
    const all = document.body.innerText.replace(/\s+/g, ' ').replace(/[\u2066-\u2069]/g, '');
    return isPlain ? all.includes(want) : new RegExp(want).test(all);
  };
  await until(page, `"${source}" does not appear`, stands, [source, plain], timeout);
}

/** Taps what has that role and that whole name. */
export const tap = (page, name, role = 'button') =>
  tapAt(page, `::-p-aria([name="${name}"][role="${role}"])`);

/** Taps the innermost thing that holds the text. */
export const tapText = (page, text) => tapAt(page, `::-p-text(${text})`);

/** Chooses one of several, by the words beside it. */
export async function choose(page, text) {
  const label = (want) =>
    [...document.querySelectorAll('label')].find((l) => l.textContent.trim() === want);
  const find = (timeout) => page.waitForFunction(label, { polling, timeout }, text);
  await tapFound(page, find, text);
}

/**
 * Runs in the page: the field whose label begins with the text. To be `held` it must take
 * letters, in place of what it holds.
 */
const labelled = (text, held) => {
  const field = [...document.querySelectorAll('input, textarea')].find(({ labels }) =>
    [...labels].some((l) => l.textContent.trim().startsWith(text)),
  );
  if (!field || !held) return field;
  field.focus();
  field.select();
  return document.activeElement === field;
};

/** The field whose label begins with the text. */
export async function field(page, label, timeout = patience()) {
  const handle = await page.waitForFunction(labelled, { polling, timeout }, label);
  return handle.asElement();
}

/** Types into a field, in place of what it held. */
export async function type(page, label, text) {
  await tapFound(page, (timeout) => field(page, label, timeout), label);
  await until(page, `"${label}" takes no letters`, labelled, [label, true]);
  await page.keyboard.type(text);
}

/**
 * Runs in the page: makes the nth field that the selector means take letters, in place of
 * what it holds, wherever it is folded away; says whether it does.
 */
const held = (selector, nth) => {
  const field = document.querySelectorAll(selector)[nth];
  if (!field) return false;
  for (let up = field; up; up = up.parentElement) if (up.tagName === 'DETAILS') up.open = true;
  field.scrollIntoView({ block: 'center', behavior: 'instant' });
  field.focus();
  field.select();
  return document.activeElement === field;
};

/** Types into the nth field that the selector means, in place of what it held. */
export async function write(page, selector, text, nth = 0) {
  await until(page, `${selector}, ${nth}, takes no letters`, held, [selector, nth]);
  await page.keyboard.type(text);
}

/** Leaves the field that has the focus. */
export const leave = (page) => page.evaluate(() => document.activeElement.blur());

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

/** What stands under the heading `title`, to the end of its article or section, once it is there. */
export async function under(page, title) {
  const part = (text) => {
    const all = [...document.querySelectorAll('h2, h3')];
    const found = all.find((h) => h.textContent.replace(/\s+/g, ' ').trim() === text);
    return found?.closest('article, section').innerText.replace(/\s+/g, ' ');
  };
  const told = await until(page, `there is no "${title}"`, part, [title]);
  return told.jsonValue();
}

/** Chooses an entry of the list that the selector means, by its value, once both are there. */
export async function chooseFrom(page, selector, value) {
  const chosen = (of, want) => {
    const list = document.querySelector(of);
    if (!list || ![...list.options].some((option) => option.value === want)) return false;
    list.value = want;
    for (const heard of ['input', 'change'])
      list.dispatchEvent(new Event(heard, { bubbles: true }));
    return true;
  };
  await until(page, `${selector} has no "${value}"`, chosen, [selector, value]);
}

/** Answers a question that has a list of answers, by the words of both. */
export async function answer(page, label, text) {
  const marks = /[\u2066-\u2069]/g;
  const wanted = [label, text].map((said) => said.replace(marks, ''));
  const choosesIn = (want, one) => {
    const plain = (part) => part.textContent.replace(/[\u2066-\u2069]/g, '').trim();
    for (const list of document.querySelectorAll('select')) {
      const option = [...list.options].find((o) => plain(o) === one); // some come late
      if (!option || ![...list.labels].some((l) => plain(l) === want)) continue;
      list.value = option.value;
      for (const heard of ['input', 'change'])
        list.dispatchEvent(new Event(heard, { bubbles: true }));
      return true;
    }
    return false;
  };
  await until(page, `no list "${label}" has "${text}"`, choosesIn, wanted);
}
