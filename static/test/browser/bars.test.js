// What one has come to by keys is seen, on a window so small that a page stands there at
// 400 %, on every screen: no bar is over it, and bars that would take too much let go.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { barsAmiss, focusHidden, staysAmiss, untilDrawn } from './layout.js';
import { openPhones } from './open-phones.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { phoneOf, screens } from './screens.js';

const most = 40; // taps of the key on one screen
const sizes = [
  { width: 320, height: 256 }, // 1280 × 1024 at 400 %
  { width: 360, height: 740 },
];

let phone;
let end;
before(async () => ({ phone, end } = await openPhones()));
after(() => end());

for (const states of Object.values(screens))
  for (const [name, way] of Object.entries(states).slice(0, 2))
    test(name, async () => {
      const page = await phone(phoneOf(way));
      await page.bringToFront();
      for (const size of sizes) {
        await page.setViewport(size);
        await way(page);
        assert.deepEqual(await staysAmiss(page, barsAmiss), [], `${size.width} × ${size.height}`);
        const hidden = [];
        for (let n = 0; n < most; n++) {
          await page.keyboard.press('Tab');
          hidden.push(...(await staysAmiss(page, focusHidden)));
        }
        assert.deepEqual(hidden, [], `${size.width} × ${size.height}`);
      }
    });

/** Runs in the page: something comes late right above what has the focus. */
function comeLate() {
  const late = document.createElement('p');
  late.style.height = '120px';
  document.activeElement.closest('main > *').before(late);
}

test('what comes late above the focus pushes it behind no bar', async () => {
  const page = await phone('in use');
  await page.bringToFront();
  await page.setViewport(sizes[1]);
  await screens.bike['plan, just opened'](page);
  const isLow = () => {
    const { bottom } = document.activeElement.getBoundingClientRect();
    const bar = document.querySelector('.actions').getBoundingClientRect();
    return document.activeElement.closest('main > *') && bottom > bar.top - 120;
  };
  for (let n = 0; !(await page.evaluate(isLow)); n++) {
    assert.ok(n < most, 'something is just above the bar');
    await page.keyboard.press('Tab');
  }
  await page.evaluate(comeLate);
  assert.deepEqual(await staysAmiss(page, focusHidden), []);
  await page.mouse.wheel({ deltaY: -2000 });
  await page.waitForFunction(() => scrollY === 0, { polling, timeout: patience() });
  await page.evaluate(comeLate);
  await untilDrawn(page);
  assert.equal(await page.evaluate(() => scrollY), 0, 'whoever has scrolled stays there');
});
