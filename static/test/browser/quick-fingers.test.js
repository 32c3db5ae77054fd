// Whoever types quickly into a field tapped right after another loses no letter, whatever
// is drawn meanwhile: over every form, with pairs of fields and a pace that a seed chooses.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { Chance } from '../chance.js';
import { goTo, plantIn } from './job-page.js';
import { openPhones } from './open-phones.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { openAll } from './screens/on-screen.js';
import { screens } from './screens.js';
import { sampleCard } from './words.js';

const seed = Number(process.env.SEED ?? 17);
const pairs = Number(process.env.PAIRS ?? 8); // of each form
const fastest = 5; // ms a letter
const slowest = 60;

// What a person may type: figures, some of them good in few fields, and words.
const texts = ['12', '1.5', '140', '2500', 'grey', '18 mm', '3,5 L', '30 N·m', 'q'];

/** To an own card with a figure in most of its fields. */
const editor = async (page) => {
  const card = { ...sampleCard('hallowmoor-drover-1360'), id: 'quick' };
  const text = JSON.stringify(card);
  await plantIn(page, 'cards', { key: 'quick', card, text, changed: '2026-11-01' });
  await goTo(page, '#/edit/quick');
  await page.waitForSelector('[name="/make"]');
};

const at = (address, ready) => async (page) => {
  await goTo(page, address);
  await page.waitForSelector(ready);
};

const heldByStep = '.asks input[name=value]';

/** Form -> [the way to it, the phone]. */
const forms = {
  editor: [editor],
  plan: [at('#/bike/quillane-orsena-720', '#outside')],
  'calculation with lists': [at('#/bench/bottles', 'form.calculation')],
  'calculation of many fields': [at('#/bench/wrench-check', 'form.calculation')],
  'odometer and note': [at('#/job/open-job/step/identify', heldByStep)],
  'reading and note': [at('#/job/open-job/step/measure-engine', heldByStep)],
  'torque and note': [at('#/job/open-job/step/tighten-drain', heldByStep)],
  'job on one page': [at('#/job/open-job/page', '.job-page input:not([type=checkbox])')],
  'details of a bike': [at('#/details/tessaly-corda-570', '#details-figure-value, #details-vin')],
  visit: [screens.visit['visit, just begun'], 'works for others'],
  bill: [at('#/bill/open-job', '#bill-text-0')],
  'book of old oil': [screens.books['books of old oil, what was handed in']],
  'book of the shelf': [screens.books['books, the shelf']],
  'book of torque wrenches': [screens.books['books, torque wrenches']],
  'owner’s sheet': [at('#/sheet/open-job', '#done-by')],
};

/**
 * Runs in the page: the ids of the fields that letters are typed in, and of those in which
 * one of several is chosen, in their order.
 */
const fieldsHere = () => {
  const fields = [...document.querySelectorAll('main :is(input, textarea, select)')].filter(
    ({ type }) => ['text', 'search', 'textarea', 'select-one'].includes(type),
  );
  return fields
    .filter((field) => field.checkVisibility())
    .map(({ id, type }) => ({ id, chosen: type === 'select-one' }));
};

/** Runs in the page: chooses the last entry of a list. */
const chooseLast = (id) => {
  const list = document.getElementById(id);
  if (!list) return;
  list.value = [...list.options].at(-1).value;
  for (const heard of ['input', 'change']) list.dispatchEvent(new Event(heard, { bubbles: true }));
};

/** Runs in the page: brings a field clear of the bars, and says where its middle is. */
const placeOf = (id) => {
  const field = document.getElementById(id);
  if (!field) return undefined;
  field.scrollIntoView({ block: 'center', behavior: 'instant' });
  const { left, top, width, height } = field.getBoundingClientRect();
  return [left + width / 2, top + height / 2];
};

/**
 * Taps a field and types in place of what stood there, or chooses the last of several;
 * resolves to what must stand in fields then. What was chosen before may have taken it away.
 */
async function fill(page, { id, chosen }, text, delay) {
  if (chosen) {
    await page.evaluate(chooseLast, id);
    return [];
  }
  const place = await page.evaluate(placeOf, id);
  if (!place) return [];
  await page.mouse.click(...place); // at once: what is drawn between is what is tried
  await page.evaluate(() => document.activeElement.select?.());
  await page.keyboard.type(text, { delay });
  return [[id, text]];
}

let phones;
before(async () => (phones = await openPhones()));
after(() => phones.end());

for (const [name, [way, on = 'in use']] of Object.entries(forms))
  test(`${name}: no letter is lost`, async () => {
    const page = await phones.phone(on);
    await page.bringToFront();
    await page.setViewport({ width: 360, height: 740 });
    await way(page);
    const chance = new Chance(seed);
    let asked = 0; // of the fields in which something was typed, those that stayed
    for (let n = 0; n < pairs; n++) {
      await openAll(page);
      const all = await page.evaluate(fieldsHere);
      const ids = all.map(({ id }) => id);
      assert.deepEqual(ids.filter(Boolean), [...new Set(ids)], 'each field has an id of its own');
      const second = chance.pick(all.filter(({ chosen }) => !chosen));
      const place = all.indexOf(second);
      const near = all.filter((_, k) => k !== place && Math.abs(k - place) < 6);
      const pace = fastest + chance.below(slowest - fastest + 1);
      await page.emulateCPUThrottling(chance.pick([1, 4]));
      const wanted = [];
      for (const field of [...(near.length ? [chance.pick(near)] : []), second])
        wanted.push(...(await fill(page, field, chance.pick(texts), pace)));
      await page.evaluate(() => document.activeElement.blur());
      asked += await untilHeld(page, wanted, `SEED=${seed}, pair ${n}, ${pace} ms a letter`);
    }
    assert.ok(asked >= pairs / 2, `${asked} fields of ${pairs} pairs were asked for to the end`);
    await page.emulateCPUThrottling(1);
  });

/**
 * Waits until nothing is being taken in and each field that is still asked for holds what
 * was typed there; resolves to how many are.
 */
async function untilHeld(page, wanted, how) {
  const held = (pairs) =>
    !document.querySelector('[aria-busy=true]') &&
    pairs.every(([id, text]) => (document.getElementById(id)?.value ?? text) === text);
  const stands = () =>
    page.evaluate((pairs) => pairs.map(([id]) => document.getElementById(id)?.value), wanted);
  try {
    await page.waitForFunction(held, { polling, timeout: patience() }, wanted);
  } catch {
    assert.deepEqual(
      await stands(),
      wanted.map(([, text]) => text),
      how,
    );
  }
  return (await stands()).filter((value) => value !== undefined).length;
}
