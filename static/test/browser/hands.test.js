// The job by keyboard alone.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { planOf, untilStep } from './job-page.js';
import { staysAmiss } from './layout.js';
import { openPhones } from './open-phones.js';
import { polling } from './page.js';
import { heading, untilSeen } from './person.js';
import { screens } from './screens.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const phone = { width: 360, height: 740 };

let page;
let end;

before(async () => {
  const opened = await openPhones();
  end = opened.end;
  page = await opened.phone('in use');
});

after(() => end());

test('by keyboard alone: a bike, its plan, the whole job and the second look', async () => {
  await page.setViewport(phone);
  await screens.bikes.bikes(page);
  await tabTo(`${card.make} ${card.model}`, 'bike');
  await page.keyboard.press('Enter');
  await untilFocused('H1');
  assert.equal(await heading(page), `${card.make} ${card.model}`);
  for (const word of ['due.title', 'plan.start']) await untilSeen(page, words(word)); // all is there
  await tabTo(words('plan.start'));
  await page.keyboard.press('Enter');
  const { steps } = await planOf(page, card);
  const last = steps.filter(({ after }) => !after).length;
  for (let number = 1; number <= last; number++) {
    await untilStep(page, number);
    await untilFocused('H1');
    await tabTo(words('job.done'));
    await page.keyboard.press('Enter');
    if (!(await page.$('.actions.brake'))) continue;
    await tabTo(words('job.brake.on'));
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
    const [name] = await page.evaluate(focused);
    covered.push(...(await staysAmiss(page, hidden)));
    if (name.startsWith(text)) return assert.deepEqual(covered, [], 'covered by something');
  }
  throw new Error(`Tab never comes to "${text}"`);
}

const hidden = async () => {
  const [name, isHidden] = await page.evaluate(focused);
  return isHidden ? [name] : [];
};

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
