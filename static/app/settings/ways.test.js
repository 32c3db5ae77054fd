// Which way to the home screen is shown first, and that each has its words and picture.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { entriesOf, defaultLanguage } from '../../test/catalogue.js';
import { wayHere, ways } from './ways.js';

const tab = { secure: true, installed: false };
const browser = (engine, device, more) => ({
  engine,
  device,
  other: false,
  inside: false,
  ...more,
});

/** [browser, facts, the way or why there is none]. */
const table = [
  [browser('webkit', 'iphone'), tab, 'iphone'],
  [browser('webkit', 'ipad'), tab, 'ipad'],
  [browser('webkit', 'iphone', { other: true }), tab, 'apple-other'],
  [browser('chromium', 'iphone'), tab, 'apple-other'],
  [browser('webkit', 'iphone', { inside: true }), tab, 'home.inside'],
  [browser('webkit', 'iphone', { inside: true }), { ...tab, installed: true }, 'home.is-there'],
  [browser('chromium', 'android'), tab, 'android-chromium'],
  [browser('gecko', 'android'), tab, 'android-gecko'],
  [browser('chromium', 'android', { inside: true }), tab, 'home.inside'],
  [browser('chromium', 'android'), { ...tab, secure: false }, 'home.insecure'],
  [browser('chromium', 'android'), { ...tab, installed: true }, 'home.is-there'],
  [browser('webkit', 'mac'), tab, 'mac'],
  [browser('chromium', 'mac'), tab, 'computer-chromium'],
  [browser('chromium', 'computer'), tab, 'computer-chromium'],
  [browser('gecko', 'computer'), tab, 'home.computer-gecko'],
  [browser('gecko', 'mac'), tab, 'home.computer-gecko'],
  [browser('webkit', 'computer'), tab, 'home.unknown'],
  [browser('unknown', 'unknown'), tab, 'home.unknown'],
  [browser('unknown', 'android'), tab, 'home.unknown'],
];

for (const [given, facts, expected] of table)
  test(`${JSON.stringify({ ...given, ...facts })}: ${expected}`, () => {
    const { way, why } = wayHere(given, facts);
    assert.equal(way ?? why, expected);
    assert.equal((way === null) + (why === null), 1, 'one of the two');
    assert.ok(way === null || ways.has(way));
  });

test('each way has a name, a picture that is said, and steps in words', () => {
  const words = entriesOf(defaultLanguage);
  const reached = new Set(table.map(([given, facts]) => wayHere(given, facts).way));
  for (const [way, { steps }] of ways) {
    assert.ok(reached.has(way), `no browser is told ${way}`);
    assert.ok(steps.length >= 2, way);
    for (const word of [`home.${way}`, `home.${way}.picture`, ...steps])
      assert.ok(word in words, word);
  }
});

test('an icon of WebKit begins with a store of its own, and no other does', () => {
  const apart = [...ways].filter(([, way]) => way.apart).map(([name]) => name);
  assert.deepEqual(apart.sort(), ['apple-other', 'ipad', 'iphone', 'mac']);
});
