// The level, dragged in the picture of the gauge: it is read where the finger is.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { lookNow } from './look-jobs.js';
import { goTo, plant, stored } from './job-page.js';
import { openSite } from './open-site.js';
import { untilState } from './page.js';
import { tap, untilSeen } from './person.js';
import { words } from './words.js';

/** Where things of the picture are on the screen: its edges, and its two marks. */
const geometry = (page) =>
  page.$eval('.drag svg', (svg) => {
    svg.scrollIntoView({ block: 'center' });
    const rim = svg.querySelector('.rim').getBoundingClientRect();
    const [high, low] = [...svg.querySelectorAll('.gauge-mark')].map(
      (mark) => mark.getBoundingClientRect().top,
    );
    return { x: rim.left + rim.width / 2, top: rim.top, bottom: rim.bottom, high, low };
  });

test('the level is what stands where the finger is, at five heights of the gauge', async (t) => {
  const { page, complaints } = await openSite(t);
  t.after(() => assert.deepEqual(complaints, []));
  await untilState(page, 'ready');
  await plant(page, lookNow);
  const id = lookNow.steps?.find((step) => step.startsWith('level-')) ?? 'level-found-engine';
  await goTo(page, `#/job/now/step/${id}`);
  const slider = await page.waitForSelector('.drag input');
  const [least, most] = await slider.evaluate(({ min, max }) => [Number(min), Number(max)]);
  const { x, top, bottom, high, low } = await geometry(page);
  for (const [what, y, share] of [
    ['on the upper mark', high, 100],
    ['halfway between the marks', (high + low) / 2, 50],
    ['on the lower mark', low, 0],
    ['above the gauge', top - 40, most],
    ['below the gauge', bottom + 40, least],
  ]) {
    await page.mouse.move(x, (high + low) / 2);
    await page.mouse.down();
    await page.mouse.move(x, y, { steps: 3 });
    await page.mouse.up();
    assert.equal(Number(await slider.evaluate(({ value }) => value)), share, what);
    await untilSeen(page, words('level.keep', { share }));
  }
  await page.mouse.move(x, top); // not held: nothing moves
  await untilSeen(page, words('level.keep', { share: least }));

  await page.keyboard.press('ArrowUp'); // the slider has the focus
  await untilSeen(page, words('level.keep', { share: least + 5 }));
  await tap(page, words('level.keep', { share: least + 5 }));
  await untilSeen(page, words('job.kept', { value: `${least + 5} %` }));
  const kept = (await stored(page, 'events')).filter(({ kind }) => kind === 'reading');
  assert.deepEqual(
    kept.map(({ value }) => value),
    [`${least + 5} %`],
    JSON.stringify(kept),
  );
});
