// What one has come to by keys is seen, on a window so small that a page stands there at
// 400 %, on every screen: no bar is over it, and bars that would take too much let go.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { barsAmiss, focusHidden, untilDrawn } from './layout.js';
import { openPhones } from './open-phones.js';
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
        await untilDrawn(page);
        assert.deepEqual(await barsAmiss(page), [], `${size.width} × ${size.height}`);
        const hidden = [];
        for (let n = 0; n < most; n++) {
          await page.keyboard.press('Tab');
          const amiss = await page.evaluate(focusHidden);
          if (amiss) hidden.push(amiss);
        }
        assert.deepEqual(hidden, [], `${size.width} × ${size.height}`);
      }
    });
