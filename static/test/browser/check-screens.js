// The tests that hold for every screen in every state, for everybody: each says what
// it is and leaves nothing unsaid, axe-core finds nothing, nothing scrolls sideways,
// and a glove finds every control.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { after, before, test } from 'node:test';
import { barsAmiss, staysAmiss, stickingOut, textSize, tooSmall } from './layout.js';
import { openPhones } from './open-phones.js';
import { phoneOf, screens } from './screens.js';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const small = { width: 360, height: 740 };
const smallest = { width: 320, height: 568 };
const wide = { width: 1280, height: 900 };

// Where one works with gloves on; elsewhere one reads.
const withGloves = ['job', 'trouble', 'aid', 'bench', 'cards', 'edit', 'manual', 'visit', 'visits'];

/** Tests these screens in all their states. */
export function checkScreens(...names) {
  let phone;
  let end;
  before(async () => ({ phone, end } = await openPhones()));
  after(() => end());
  for (const screen of names)
    for (const [name, way] of Object.entries(screens[screen]))
      test(name, async (t) => {
        const page = await phone(phoneOf(way));
        await page.bringToFront(); // a tab in the background draws nothing
        await page.setViewport(small);
        await way(page);
        await check(t, page, screen);
      });
}

async function check(t, page, screen) {
  await t.test('it says what it is', async () => {
    const { address, kind, heading } = await page.evaluate(shown);
    assert.equal(address, screen);
    assert.notEqual(kind, 'screen-failed');
    assert.ok(heading, 'there is a heading, with words in it');
  });
  await t.test('every word is there, and every heading stands over something', async () => {
    assert.deepEqual(await page.evaluate(unsaid), []);
  });
  await t.test('days, times and numbers are written in one way', async () => {
    assert.deepEqual(await page.evaluate(otherwiseWritten), []);
  });
  if (withGloves.includes(screen))
    await t.test('a glove finds every control', async () => {
      assert.deepEqual(await staysAmiss(page, tooSmall), []);
    });
  await t.test('axe finds nothing, light and dark, on phone and desk', async () => {
    for (const size of [small, wide]) {
      await page.setViewport(size);
      await page.evaluate(letBarsGo);
      await theme(page, 'light');
      assert.deepEqual(await violations(page, { type: 'tag', values: rules }), [], size.width);
      await theme(page, 'dark'); // which changes the colours alone
      assert.deepEqual(await violations(page, ['color-contrast']), [], `dark, ${size.width}`);
    }
  });
  await page.evaluate(letBarsGo, '');
  await t.test('no sideways scrolling at 320 px, nor at 360 px with text of 200 %', async () => {
    await page.setViewport(smallest);
    assert.deepEqual(await staysAmiss(page, stickingOut), [], '320 px');
    assert.deepEqual(await staysAmiss(page, barsAmiss), [], '320 × 568');
    await page.setViewport(small);
    await textSize(page, 2);
    try {
      assert.deepEqual(await staysAmiss(page, stickingOut), [], 'text of 200 %');
    } finally {
      await textSize(page, 1);
    }
  });
}

/** Runs in the page: the name in the address, the kind of the screen, and its heading. */
const shown = () => ({
  address: location.hash.split(/[/?]/)[1],
  kind: document.querySelector('main').className,
  heading: document.querySelector('h1')?.innerText.trim(),
});

/**
 * Runs in the page: texts that are the id of a word, have a placeholder left or print
 * what is missing, and headings with nothing under them.
 */
function unsaid() {
  const texts = [...document.querySelectorAll('[aria-label]')].map(({ ariaLabel }) => ariaLabel);
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) texts.push(walker.currentNode.data);
  const raw = /^\s*[a-z][\w-]*(\.[\w-]+)+\s*$|\{\w+\}|\b(undefined|NaN|\[object)\b/;
  const alone = [...document.querySelectorAll('section > h2:only-child')];
  return [...texts.filter((text) => raw.test(text)), ...alone.map((h2) => `${h2.innerText}: -`)];
}

/**
 * Runs in the page: days, times and numbers that are written otherwise than words/dates.js
 * and the core write them. What stands in quotes is an example of what may be typed, and
 * what is `written` is what somebody typed.
 */
export function otherwiseWritten() {
  const texts = [...document.querySelectorAll('[aria-label]')].map(({ ariaLabel }) => ariaLabel);
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode())
    if (!walker.currentNode.parentElement.closest('.written, script, style'))
      texts.push(walker.currentNode.data);
  const others = [
    /\b\d{4}-\d\d-\d\d\b/, // 2026-11-28
    /\p{L}+\.? \d{1,2}, \d{4}\b/u, // Nov 28, 2026
    /\b\d{1,2}[./]\d{1,2}[./]\d{2,4}\b/, // 28.11.2026
    /\d:\d\d(:\d\d)?\s*[AaPp]\.?[Mm]\b/, // 2:05 PM
    /\d[,\u2019\u202f]\d{3}\b/, // 1,500
    /\d,\d+\s*(?:\p{L}|%|$)/u, // 2,5 L
  ];
  return texts
    .map((text) => text.replace(/"[^"]*"|\u201c[^\u201d]*\u201d|\btidysump-[\w.-]+/g, ''))
    .filter((text) => others.some((way) => way.test(text)));
}

export const theme = (page, value) =>
  page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value }]);

export async function violations(page, runOnly) {
  // By way of the debugger: the page's own policy would not let it in.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe);
  const { passes, violations: found } = await page.evaluate(
    (only) => globalThis.axe.run(document, { runOnly: only }),
    runOnly,
  );
  assert.ok(
    passes.some(({ id }) => id === 'color-contrast'),
    'axe looked at the colours',
  );
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
}

/**
 * Runs in the page: bars go with the rest, or stay again. What one covers half at the moment
 * is scrolled clear of it by a person (barsAmiss), and is no small target.
 */
function letBarsGo(position = 'static') {
  for (const bar of document.querySelectorAll('.actions, .tabs, [data-bar]'))
    bar.style.position = position;
}
