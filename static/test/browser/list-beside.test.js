// In a wide window the list of bikes stands beside the plan of one, and says which is shown.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo } from './job-page.js';
import { barsAmiss, stickingOut, untilDrawn } from './layout.js';
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
  await untilDrawn(page);
  const edges = () =>
    page.evaluate(() =>
      ['.tabs', '.list-beside', 'main'].map((name) => {
        const { left, right } = document.querySelector(name).getBoundingClientRect();
        return [left, right];
      }),
    );
  const [tabs, list, plan] = await edges();
  assert.ok(tabs[1] <= list[0] && list[1] <= plan[0], JSON.stringify([tabs, list, plan]));
  assert.deepEqual(await stickingOut(page), []);
  assert.deepEqual(await barsAmiss(page), []);

  await (await page.waitForSelector('.list-beside a[href="#/bike/marrowick-pip-130"]')).click();
  await page.waitForFunction(
    () => document.querySelector('.list-beside [aria-current]')?.innerText.includes('Pip'),
    { polling },
  );
  await page.waitForFunction(
    () => document.querySelector('#screen h1')?.innerText.includes('Pip'),
    { polling },
  );

  await page.setViewport({ width: 1280, height: 900 });
  await untilDrawn(page);
  const high = await page.$$eval('.list-beside .bikes a', (all) => all.map((a) => a.offsetHeight));
  assert.ok(high.length > 10 && Math.max(...high) < 130, `a row is a row there too: ${high}`);

  await page.setViewport({ width: 819, height: 700 });
  await page.waitForFunction(() => !document.querySelector('.list-beside'), { polling });
  await untilDrawn(page);
  const { left } = await page.$eval('main', (main) => main.getBoundingClientRect().toJSON());
  assert.ok(left < 60, `the plan begins at ${left}`);
  assert.deepEqual(complaints, []);
});
