// The job with a glove, and by keyboard alone.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { planOf, untilStep } from './job-page.js';
import { polling } from './page.js';
import { heading, untilSeen } from './person.js';
import { openSampleSite } from './sample-site.js';
import { screens } from './screens.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-650');
const phone = { width: 360, height: 740 };

let page;
let end;

before(async () => {
  ({ page, end } = await openSampleSite());
});

after(() => end());

// Small on purpose, each with its reason; 24 px is what WCAG 2.2 asks at least.
const small = [
  'dd summary', // the mark of a figure's standing, within the figure's line
];

for (const name of Object.keys(screens).filter((n) =>
  /step|look|ruler|deciding|closing|calculation|editor|cards|problem/.test(n),
)) {
  test(`${name}: a glove finds every control`, async () => {
    await page.setViewport(phone);
    await screens[name](page);
    const low = await page.evaluate((exceptions) => {
      const controls =
        'a, button, .button, input:not([type=radio], [type=checkbox], [type=file]), select, textarea, summary, fieldset label, .ticked';
      return [...document.querySelectorAll(controls)]
        .filter((element) => element.checkVisibility())
        .map((element) => [element, element.getBoundingClientRect()])
        .filter(([element, { width, height }]) => {
          const least = element.matches(exceptions) ? 24 : 56;
          return height < least || width < 24;
        })
        .map(
          ([element, { width, height }]) =>
            `${Math.round(width)} × ${Math.round(height)}: ${element.innerText}`,
        );
    }, small.join());
    assert.deepEqual(low, []);
  });
}

test('by keyboard alone: a bike, its plan, the whole job and the second look', async () => {
  await page.setViewport(phone);
  await screens.bikes(page);
  await tabTo(`${card.make} ${card.model}`, 'bike');
  await page.keyboard.press('Enter');
  await untilFocused('H1');
  assert.equal(await heading(page), `${card.make} ${card.model}`);
  await tabTo(words('plan.start'));
  await page.keyboard.press('Enter');
  const { steps } = await planOf(page, card);
  const last = steps.filter(({ after }) => !after).length;
  for (let number = 1; number <= last; number++) {
    await untilStep(page, number);
    await untilFocused('H1');
    await tabTo(words('job.done'));
    await page.keyboard.press('Enter');
  }
  await untilSeen(page, words('job.finish.ready'));
  await untilFocused('H1');
  await tabTo(words('job.finish'));
  await page.keyboard.press('Enter');
  await untilSeen(page, words('record.waiting'));
  await untilFocused('H1');
  await tabTo(words('record.go-on'));
  await page.keyboard.press('Enter');
  await untilSeen(page, words('step.second-look'));
  await untilFocused('H1');
  await tabTo(words('leak.dry').replace(/^./, (letter) => letter.toUpperCase()));
  await page.keyboard.press('Space');
  await untilSeen(page, words('job.kept', { value: words('leak.dry') }));
  await tabTo(words('job.done'));
  await page.keyboard.press('Enter');
  await untilFocused('H1');
  await tabTo(words('nav.record'));
  await page.keyboard.press('Enter');
  await untilSeen(page, words('record.closed'));
});

const untilFocused = (tag) =>
  page.waitForFunction((name) => document.activeElement?.tagName === name, { polling }, tag);

/** Tabs on until what has the focus begins with the text; nothing on the way may be covered. */
async function tabTo(text) {
  const covered = [];
  for (let tabs = 0; tabs < 120; tabs++) {
    await page.keyboard.press('Tab');
    const [name, hidden] = await page.evaluate(focused);
    if (hidden) covered.push(name);
    if (name.startsWith(text)) return assert.deepEqual(covered, [], 'covered by something');
  }
  throw new Error(`Tab never comes to "${text}"`);
}

/** Runs in the page: what has the focus, and whether something covers it. */
function focused() {
  const element = document.activeElement;
  const shown = element.closest('label') ?? element;
  const { x, y, width, height } = shown.getClientRects()[0] ?? new DOMRect();
  const top = document.elementFromPoint(x + width / 2, y + height / 2);
  const name = (shown.innerText || element.ariaLabel || element.tagName)
    .replace(/\s+/g, ' ')
    .trim();
  return [name, !(top && (shown.contains(top) || top.contains(shown)))];
}
