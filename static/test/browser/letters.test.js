// A field that takes only so many letters says so when it cuts what is pasted, and
// cuts between characters.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo, plant, plantIn, plantSetting } from './job-page.js';
import { openSite } from './open-site.js';
import { untilState } from './page.js';
import { sampleJobs } from './sample-jobs.js';
import { words } from './words.js';

const [[job, events]] = sampleJobs([]);

/** Puts a text into a field as pasting does; resolves to what stands there and what is said below. */
const paste = (page, selector, text) =>
  page.$eval(
    selector,
    (field, pasted) => {
      for (let up = field; up; up = up.parentElement) if (up.tagName === 'DETAILS') up.open = true;
      field.value = pasted;
      field.dispatchEvent(new InputEvent('input', { bubbles: true, inputType: 'insertFromPaste' }));
      const line = document.getElementById(`${field.id}-letters`);
      return {
        value: field.value,
        letters: Number(line.dataset.letters),
        said: line.checkVisibility() ? line.innerText.trim() : '',
      };
    },
    text,
  );

test('what does not fit a field is cut between characters, and the field says so', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await plant(page, job, events);
  await plantSetting(page, 'bills', true);
  const own = { ...job.card, id: 'own', sources: job.card.sources };
  const text = JSON.stringify(own);
  await plantIn(page, 'cards', { key: 'own', card: own, text, changed: '2026-11-01' });
  for (const [address, selector] of [
    ['#/job/open-job/step/lay-out', 'textarea[name=text]'],
    ['#/job/open-job/step/measure-engine', '.asks input[name=value]'],
    ['#/edit/own', '[name="/make"]'],
    ['#/edit/own', '[name="/notes"]'],
    ['#/bill/open-job', '#bill-customer'],
    ['#/bill/open-job', '#bill-text-0'],
    ['#/sheet/open-job', '#done-by'],
  ]) {
    await goTo(page, address);
    await page.waitForSelector(selector);
    await page.evaluate((of) => {
      const fold = document.querySelector(of).closest('details');
      if (fold) fold.open = true;
    }, selector);
    const { value, letters, said } = await paste(page, selector, 'short');
    assert.deepEqual([value, said], ['short', ''], selector);
    const begins = 'x'.repeat(letters - 2);
    const long = await paste(page, selector, `${begins}👩‍🔧 and more`);
    assert.equal(long.value, begins, selector);
    assert.equal(long.said, words('field.cut', { count: letters }), selector);
    const mended = await paste(page, selector, `${begins}é`);
    assert.deepEqual([mended.value, mended.said], [`${begins}é`, ''], selector);
  }
  assert.deepEqual(complaints, []);
});
