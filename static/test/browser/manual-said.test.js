// What a person says that words of a page are is read there, and goes into the card.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { tapAt } from './finger.js';
import { stored } from './job-page.js';
import { freshManual, giveText, leaveAll, takeSure, tapWord } from './manual-page.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import { patience } from './patience.js';
import { chooseFrom, tap, tapText, untilSeen } from './person.js';
import { words } from './words.js';

const page300 = `PLAINFORD HERON 300
Engine oil without filter replacement ......... 1.5 L
Oil drain bolt ............. 25 N·m
The big one on the left 18 N·m`;

/** Runs in the page: whether a filter of that kind lies in the store. */
const isKnown = (kind) =>
  new Promise((resolve) => {
    const opening = indexedDB.open('tidysump');
    opening.onsuccess = () => {
      const reading = opening.result.transaction('cards').objectStore('cards').getAll();
      reading.onsuccess = () => {
        opening.result.close();
        resolve(reading.result.some(({ card }) => card.filters?.[0].kind === kind));
      };
    };
  });

test('a person says what words of a page are; what they can’t be is refused', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, page300);
  await takeSure(page);
  await tapWord(page, '18');
  await untilSeen(page, words('manual.saying'));
  await chooseFrom(page, '#thing', 'bolt.filter');
  const isTorque = `.choices ::-p-aria([name="${words('manual.what', { thing: words('manual.of.bolt.filter'), aspect: words('manual.is.thread') })}"])`;
  await tapAt(page, isTorque);
  await untilSeen(page, words('finding.manual-not-that', { text: '18' }));
  await tapAt(
    page,
    `.choices ::-p-aria([name="${words('manual.what', { thing: words('manual.of.bolt.filter'), aspect: words('manual.is.torque') })}"])`,
  );
  await page.waitForFunction(
    () => document.querySelector('.page-text') && !document.querySelector('#thing'),
    { polling, timeout: patience() },
  );
  await leaveAll(page);
  await tap(page, words('manual.to-plan'));
  await untilSeen(page, words('plan.start'));
  const [{ card }] = await stored(page, 'cards');
  const closed = card.bolts.find(({ purpose }) => purpose === 'filter-or-cover');
  assert.equal(closed?.torque?.value, 18, 'nobody said of what kind the filter is');
  const quoted = ({ quotes }) =>
    quotes.some(({ of }) => of.some(({ at }) => at === `${closed.id}/torque`));
  assert.ok(quoted(card));

  // Who has looked says it in the card, to which the plan leads.
  await tapText(page, words('gap.filter-kind.of', { which: words('role.engine') }));
  await tap(page, words('plan.gap.choose'), 'link');
  await untilSeen(page, words('edit.first'));
  await chooseFrom(page, '[name="/filters/0/kind"]', 'spin-on');
  await page.waitForFunction(isKnown, { polling, timeout: patience() }, 'spin-on');
  const [{ card: known }] = await stored(page, 'cards');
  const can = known.bolts.find(({ purpose }) => purpose === 'filter-can');
  assert.deepEqual([can?.id, can?.torque?.value], [closed.id, 18], 'nothing is lost');
  assert.ok(quoted(known));
  await tap(page, words('edit.plan'), 'link');
  await untilSeen(page, words('plan.start'));
  assert.deepEqual(complaints, []);
});
