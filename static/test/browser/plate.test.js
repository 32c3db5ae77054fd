// The figures of a plan are what one sees of it first.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { goTo, stored } from './job-page.js';
import { stickingOut, textSize } from './layout.js';
import { openPhones } from './open-phones.js';
import { untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const samples = readdirSync(new URL('../../../specs/cards', import.meta.url)).map((file) =>
  sampleCard(file.replace('.json', '')),
);
const hand = { width: 360, height: 740 };
const small = { width: 320, height: 568 };

let phones;

before(async () => {
  phones = await openPhones();
});

after(() => phones.end());

/** Opens a plan at its top. */
async function openPlan(page, id) {
  await goTo(page, `#/bike/${id}`);
  await page.waitForSelector('.screen-bike .plate');
  await untilSeen(page, words('plan.start'));
  await page.evaluate(() => scrollTo(0, 0));
}

/** Runs in the page: where the plate ends, and how far down one sees. */
function ends() {
  const tops = [...document.querySelectorAll('.actions, .tabs')].map(
    (bar) => bar.getBoundingClientRect().top,
  );
  return [document.querySelector('.plate').getBoundingClientRect().bottom, Math.min(...tops)];
}

/** Looks at the plan of a bike: its plate is seen at once, or by one swipe where it has several oils. */
async function seenFirst(page, { id, circuits }) {
  await openPlan(page, id);
  const [end, seen] = await page.evaluate(ends);
  assert.ok(seen < hand.height, `${id}: nothing begins the job`);
  const screens = circuits.length > 1 ? 2 : 1;
  assert.ok(end <= screens * seen, `${id}: the plate ends at ${end} px, one sees ${seen} px`);
}

test('the plate of every sample bike is seen at once, or by one swipe where it has several oils', async () => {
  const page = await phones.phone('new');
  await page.setViewport(hand);
  for (const card of samples) await seenFirst(page, card);
});

test('so is that of one’s own bikes, with jobs open on others', async () => {
  for (const [name, most] of [
    ['in use', 9],
    ['several bikes', 9],
    ['crowded', 3],
  ]) {
    const page = await phones.phone(name);
    await page.setViewport(hand);
    const own = (await stored(page, 'cards')).slice(0, most);
    for (const { key, card } of own) await seenFirst(page, { id: key, circuits: card.circuits });
    const told = await stored(page, 'bikes');
    const [{ circuits }] = samples.filter(({ id }) => id === 'tessaly-corda-570');
    for (const { id, card } of told)
      if (card === 'tessaly-corda-570') await seenFirst(page, { id, circuits });
    assert.ok(name !== 'several bikes' || told.length > 1, 'it has bikes of its own');
    assert.ok(name !== 'crowded' || own.length === most, 'it has cards of its own');
  }
});

test('the plate is whole on a small phone, with large text, mirrored and dark', async () => {
  const page = await phones.phone('new');
  for (const [viewport, scale, dir] of [
    [small, 1, 'ltr'],
    [small, 2, 'ltr'],
    [hand, 2, 'rtl'],
    [{ width: 740, height: 360 }, 1, 'ltr'],
    [{ width: 1280, height: 900 }, 1, 'rtl'],
  ]) {
    await page.setViewport(viewport);
    for (const card of samples) {
      await openPlan(page, card.id);
      await page.evaluate((way) => (document.documentElement.dir = way), dir);
      await textSize(page, scale);
      const where = `${card.id} at ${viewport.width} px, ${scale} ×, ${dir}`;
      assert.deepEqual(await page.evaluate(cutOff), [], where);
      assert.deepEqual(await stickingOut(page), [], where);
      await textSize(page, 1);
    }
  }
  await page.evaluate(() => (document.documentElement.dir = 'ltr'));
});

/** Runs in the page: what of the plate reaches out of its cell. */
function cutOff() {
  const inside = (box, part) =>
    part.left >= box.left - 0.5 && part.right <= box.right + 0.5 && part.bottom <= box.bottom + 0.5;
  return [...document.querySelectorAll('.plate > div')].flatMap((cell) =>
    [...cell.querySelectorAll('dd *, dt:not(.hidden) *')]
      .filter((part) => part.getClientRects().length && !part.closest('details:not([open]) > p'))
      .filter((part) => !inside(cell.getBoundingClientRect(), part.getBoundingClientRect()))
      .map((part) => part.textContent),
  );
}
