// In a wide window the list of bikes stands beside the plan of one, and says which is shown.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { tapAt } from './finger.js';
import { goTo } from './job-page.js';
import { barsAmiss, staysAmiss, stickingOut } from './layout.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';

test('list and plan stand side by side from 820 px, and no list below', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await page.setViewport({ width: 820, height: 700 });
  await goTo(page, '#/bike/tessaly-corda-570');
  const shown = await page.waitForSelector('.list-beside [aria-current=page]');
  assert.match(await shown.evaluate((row) => row.innerText), /Corda/);
  await page.waitForSelector('main .actions'); // the list may stand before the plan, and its bar
  const inTheWay = () =>
    page.evaluate(() => {
      const [tabs, list, plan] = ['.tabs', '.list-beside', 'main'].map((name) => {
        const { left, right } = document.querySelector(name).getBoundingClientRect();
        return [left, right];
      });
      return tabs[1] <= list[0] && list[1] <= plan[0] ? [] : [tabs, list, plan];
    });
  for (const look of [inTheWay, stickingOut, barsAmiss])
    assert.deepEqual(await staysAmiss(page, look), []);

  await tapAt(page, '.list-beside a[href="#/bike/marrowick-pip-130"]');
  await page.waitForFunction(
    () => document.querySelector('.list-beside [aria-current]')?.innerText.includes('Pip'),
    { polling },
  );
  await page.waitForFunction(
    () => document.querySelector('#screen h1')?.innerText.includes('Pip'),
    { polling },
  );

  await page.setViewport({ width: 1280, height: 900 });
  const tooHigh = () =>
    page.$$eval('.list-beside .bikes a', (all) => {
      const high = all.map((a) => a.offsetHeight);
      return high.length > 10 && Math.max(...high) < 130 ? [] : [high];
    });
  assert.deepEqual(await staysAmiss(page, tooHigh), [], 'a row is a row there too');

  await page.setViewport({ width: 819, height: 700 });
  await page.waitForFunction(() => !document.querySelector('.list-beside'), { polling });
  const tooFarIn = () =>
    page.$eval('main', (main) => {
      const { left } = main.getBoundingClientRect();
      return left < 60 ? [] : [left];
    });
  assert.deepEqual(await staysAmiss(page, tooFarIn), [], 'the plan begins at the edge');
  assert.deepEqual(complaints, []);
});
