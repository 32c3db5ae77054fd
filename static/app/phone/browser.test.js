// Which browser it is: agent texts as these browsers write them, and features that none can make up.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browserOf } from './browser.js';

const signs = { agent: '', brands: [], touches: 5, gestures: false, inner: false };
const apple = 'Mozilla/5.0 (iPhone; CPU iPhone OS 18_6 like Mac OS X) AppleWebKit/605.1.15';
const like = '(KHTML, like Gecko)';
const robot = 'Mozilla/5.0 (Linux; Android 10; K';
const mac = 'Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)';
const kit = 'AppleWebKit/537.36 (KHTML, like Gecko)';

/** [what it is, its signs, engine, device, other and inside]. */
const table = [
  [
    'the browser of an iPhone',
    { agent: `${apple} ${like} Version/26.0 Mobile/15E148 Safari/604.1`, gestures: true },
    ['webkit', 'iphone', false, false],
  ],
  [
    'another on an iPhone',
    { agent: `${apple} ${like} CriOS/140.0.7339.101 Mobile/15E148 Safari/604.1`, gestures: true },
    ['webkit', 'iphone', true, false],
  ],
  [
    'a third on an iPhone',
    { agent: `${apple} ${like} FxiOS/153.0 Mobile/15E148 Safari/605.1.15`, gestures: true },
    ['webkit', 'iphone', true, false],
  ],
  [
    'a view in an app on an iPhone',
    { agent: `${apple} ${like} Mobile/15E148`, gestures: true },
    ['webkit', 'iphone', false, true],
  ],
  [
    'an iPad, which calls itself a Macintosh',
    { agent: `${mac} AppleWebKit/605.1.15 ${like} Version/18.6 Safari/605.1.15`, gestures: true },
    ['webkit', 'ipad', false, false],
  ],
  [
    'a Macintosh',
    {
      agent: `${mac} AppleWebKit/605.1.15 ${like} Version/18.6 Safari/605.1.15`,
      gestures: true,
      touches: 0,
    },
    ['webkit', 'mac', false, false],
  ],
  [
    'WebKit on Linux',
    {
      agent: `Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/605.1.15 ${like} Version/60.5 Safari/605.1.15`,
      touches: 0,
    },
    ['webkit', 'computer', false, false],
  ],
  [
    'Chromium on Android',
    { agent: `${robot}) ${kit} Chrome/156.0.0.0 Mobile Safari/537.36`, brands: ['Chromium'] },
    ['chromium', 'android', false, false],
  ],
  [
    'the same over plain HTTP, where it has no brands',
    { agent: `${robot}) ${kit} Chrome/156.0.0.0 Mobile Safari/537.36` },
    ['chromium', 'android', false, false],
  ],
  [
    'a view in an app on Android',
    { agent: `${robot}; wv) ${kit} Version/4.0 Chrome/156.0.0.0 Mobile Safari/537.36` },
    ['chromium', 'android', false, true],
  ],
  [
    'Firefox on Android',
    { agent: 'Mozilla/5.0 (Android 15; Mobile; rv:153.0) Gecko/153.0 Firefox/153.0', inner: true },
    ['gecko', 'android', false, false],
  ],
  [
    'Firefox on a computer, its agent text hidden',
    {
      agent: 'Mozilla/5.0 (Windows NT 10.0; rv:140.0) Gecko/20100101 Firefox/140.0',
      inner: true,
      touches: 0,
    },
    ['gecko', 'computer', false, false],
  ],
  [
    'Chromium on a Macintosh',
    {
      agent: `${mac} ${kit} Chrome/156.0.0.0 Safari/537.36`,
      brands: ['Not A;Brand', 'Chromium'],
      touches: 0,
    },
    ['chromium', 'mac', false, false],
  ],
  [
    'one that writes the agent text of another',
    { agent: `${apple} ${like} Version/26.0 Mobile/15E148 Safari/604.1`, inner: true },
    ['gecko', 'iphone', false, false],
  ],
  ['one that says nothing', { agent: '', touches: 0 }, ['unknown', 'unknown', false, false]],
  ['one of its own', { agent: 'Tractor/1.0' }, ['unknown', 'unknown', false, false]],
];

for (const [what, given, [engine, device, other, inside]] of table)
  test(`${what} is told`, () => {
    assert.deepEqual(
      browserOf({ ...signs, ...given }),
      { engine, device, other, inside },
      given.agent,
    );
  });
