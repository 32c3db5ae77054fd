// The page of a manual that is pasted.
import { freshManual, giveText, leaveAll, takeSure, twoModels } from '../manual-page.js';
import { tap, untilSeen } from '../person.js';
import { words } from '../words.js';

const text = `ORRINSHAW PIKE 300                                                        2-3
SPECIFICATIONS                                             model years 2016-2022

Engine ................................ single cylinder, liquid-cooled, 292 cm³
Engine oil
   without filter replacement ......... 1.5 L (1.6 US qt, 1.3 Imp qt)
   with filter replacement ............ 1.6 L (1.7 US qt, 1.4 Imp qt)
   after overhaul ..................... 1.9 L (2.6 US qt, 1.7 Imp qt)
   viscosity, class ................... SAE 10W-40, API SL, JASO MA
Coolant ............................... 1.1 L (1.2 US qt)

TORQUES                                N·m        kgf·m      lbf·ft
Oil drain bolt, M12 x 1.5 ............. 25         2.5        18
Oil filter cover bolts, M6 (3) ........ 12         1.2        9
Strainer cap ... 15 N·m. Strainer cap: 20 N·m

Warm: check the inspection window at operating temperature, wait 3 minutes.
Oil: first 1,000 km (600 mi), then every 6,000 km (4,000 mi) or 12 months. Filter element: with every oil change.`;

const given = async (page) => {
  await freshManual(page);
  await giveText(page, text);
};

const taken = async (page) => {
  await given(page);
  await takeSure(page);
};

export const manual = {
  'manual: nothing pasted yet': (page) => freshManual(page),
  'manual: what was found': given,
  'manual: something to decide': async (page) => {
    await taken(page);
    await page.waitForSelector('.question');
  },
  'manual: what is this': async (page) => {
    await given(page);
    await tap(page, words('manual.say'));
    await untilSeen(page, words('manual.saying'));
  },
  'manual: how it keeps its oil': async (page) => {
    await freshManual(page);
    await giveText(page, 'PLAINFORD HERON 320\nOil drain bolt, M12 x 1.5 ... 25 N·m');
    await takeSure(page);
    await untilSeen(page, words('manual.layout'));
  },
  'manual: of which of two models': async (page) => {
    await freshManual(page);
    await giveText(page, twoModels);
    await untilSeen(page, words('manual.models'));
  },
  'manual: all decided': async (page) => {
    await taken(page);
    await leaveAll(page);
    await untilSeen(page, words('manual.to-plan'));
  },
};
