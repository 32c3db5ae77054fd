// What is told of the records, from the facts: each row with its source, whose letters are
// those of storage-rules.js.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { entriesOf, defaultLanguage } from '../../test/catalogue.js';
import { fateOf } from './storage-rules.js';

const usual = { store: true, secure: true, installed: false, persisted: false, answer: null };
const browsers = {
  iphone: { engine: 'webkit', device: 'iphone', other: false, inside: false },
  mac: { engine: 'webkit', device: 'mac', other: false, inside: false },
  android: { engine: 'chromium', device: 'android', other: false, inside: false },
  gecko: { engine: 'gecko', device: 'android', other: false, inside: false },
  unknown: { engine: 'unknown', device: 'unknown', other: false, inside: false },
};
const inside = (name) => ({ ...browsers[name], inside: true });

/** [source, what the facts are, browser, facts, what is told, whether it is asked for]. */
const table = [
  [
    '[WK-ITP] seven days; [WK-STORE] who decides; [MDN] private windows',
    'a tab of WebKit',
    browsers.iphone,
    {},
    ['seven-days', 'home-spared', 'promise.not-asked', 'rule.webkit', 'private'],
    true,
  ],
  [
    '[MDN] persistent skips the pressure; of the seven days nothing is published',
    'a tab of WebKit with a promise',
    browsers.mac,
    { persisted: true, answer: true },
    ['seven-days', 'home-spared', 'promise.granted', 'promise.not-days', 'private'],
    false,
  ],
  [
    '[WK-ITP] exempt, and isolated',
    'WebKit on the home screen',
    browsers.iphone,
    { installed: true, persisted: true },
    ['spared', 'own', 'promise.granted'],
    false,
  ],
  [
    '[WK-DOCK] the same in the Dock',
    'WebKit in the Dock, refused',
    browsers.mac,
    { installed: true, answer: false },
    ['spared', 'own', 'promise.refused'],
    true,
  ],
  [
    '[MDN] no StorageManager before Safari 15.2',
    'WebKit that says nothing',
    browsers.iphone,
    { persisted: null },
    ['seven-days', 'home-spared', 'promise.unknown', 'private'],
    false,
  ],
  [
    '[MDN] the app has the store of a view in it',
    'a view of WebKit in an app',
    inside('iphone'),
    {},
    ['inside', 'seven-days', 'promise.not-asked', 'rule.webkit', 'private'],
    true,
  ],
  [
    'an app on the home screen had an agent text like a view in an app',
    'WebKit on the home screen of an older phone',
    inside('iphone'),
    { installed: true },
    ['spared', 'own', 'promise.not-asked'],
    true,
  ],
  [
    '[WEB-DEV] what Chromium goes by',
    'a tab of Chromium',
    browsers.android,
    {},
    ['promise.not-asked', 'rule.chromium', 'private'],
    true,
  ],
  [
    '[WEB-DEV] the same, which may change with use',
    'a tab of Chromium, refused',
    browsers.android,
    { answer: false },
    ['promise.refused', 'rule.chromium', 'private'],
    true,
  ],
  [
    '[MDN] persistent',
    'Chromium with a promise',
    browsers.android,
    { persisted: true, answer: true },
    ['promise.granted', 'private'],
    false,
  ],
  [
    '[MDN] persistent',
    'Chromium from its icon',
    browsers.android,
    { installed: true, persisted: true },
    ['promise.granted'],
    false,
  ],
  [
    'a promise that was taken back is no promise',
    'Chromium whose promise is gone',
    browsers.android,
    { persisted: false, answer: true },
    ['promise.not-asked', 'rule.chromium', 'private'],
    true,
  ],
  [
    '[MDN] a view in an app',
    'a view of Chromium in an app',
    inside('android'),
    {},
    ['inside', 'promise.not-asked', 'rule.chromium', 'private'],
    true,
  ],
  [
    '[MDN] Firefox asks the person',
    'a tab of Gecko',
    browsers.gecko,
    {},
    ['promise.not-asked', 'rule.gecko.not-asked', 'private'],
    true,
  ],
  [
    '[MDN] Firefox asks the person',
    'a tab of Gecko, refused',
    browsers.gecko,
    { answer: false },
    ['promise.refused', 'rule.gecko.refused', 'private'],
    true,
  ],
  [
    '[WHATWG] persist() in secure contexts alone',
    'plain HTTP',
    browsers.android,
    { secure: false, persisted: null },
    ['insecure', 'private'],
    false,
  ],
  [
    '[WK-ITP] seven days whatever the scheme',
    'plain HTTP in WebKit',
    browsers.iphone,
    { secure: false, persisted: null },
    ['seven-days', 'home-spared', 'insecure', 'private'],
    false,
  ],
  [
    'nothing is kept where there is no store',
    'no store',
    browsers.gecko,
    { store: false, persisted: null },
    ['nothing'],
    false,
  ],
  [
    '[WHATWG] best-effort or persistent, whoever it is',
    'an unknown browser',
    browsers.unknown,
    {},
    ['promise.not-asked', 'private'],
    true,
  ],
];

for (const [source, what, browser, facts, said, ask] of table)
  test(`${what}: ${source}`, () => {
    const fate = fateOf({ ...usual, ...facts }, browser);
    assert.deepEqual(
      fate.says,
      said.map((word) => `storage.${word}`),
      JSON.stringify(facts),
    );
    assert.equal(fate.ask, ask);
  });

test('whatever the facts: something is told, in words that there are, and each once', () => {
  const words = entriesOf(defaultLanguage);
  const flags = [true, false];
  let tried = 0;
  for (const store of flags)
    for (const secure of flags)
      for (const installed of flags)
        for (const persisted of [...flags, null])
          for (const answer of [...flags, null])
            for (const engine of ['webkit', 'gecko', 'chromium', 'unknown'])
              for (const inside of flags) {
                const facts = { store, secure, installed, persisted, answer };
                const browser = { engine, device: 'unknown', other: false, inside };
                const { says, ask } = fateOf(facts, browser);
                const input = JSON.stringify({ ...facts, engine, inside });
                assert.ok(says.length > 0, input);
                for (const word of says) assert.ok(word in words, `${word}: ${input}`);
                assert.equal(new Set(says).size, says.length, input);
                assert.ok(!(ask && persisted !== false), `a promise can be asked for: ${input}`);
                const kept = says.includes('storage.promise.granted');
                assert.ok(!kept || (store && secure && persisted), `kept: ${input}`);
                tried++;
              }
  assert.equal(tried, 2 * 2 * 2 * 3 * 3 * 4 * 2);
});
