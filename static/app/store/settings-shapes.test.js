// A setting may be anything, by another version or by a file: what doesn't fit is as if it weren't there.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { modules, nodes } from '../../test/modules.js';
import { loadLimits } from '../core/limits.js';
import { loadSettings, settings } from './settings.js';
import { fits, known, ofThisPhone } from './settings-shapes.js';
import * as store from './store.js';
import * as whole from './whole.js';
import { FakeWorker } from '../../test/fake-worker.js';

const systems = ['metric', 'us', 'imperial'];
globalThis.document = { documentElement: { dataset: {} }, visibilityState: 'hidden' };
globalThis.Worker = function () {
  return new FakeWorker(() => ({ output: JSON.stringify({ ok: { systems } }) }));
};

// What the page itself has written of each, in this version and in those before.
const written = {
  system: systems,
  theme: ['auto', 'light', 'dark'],
  language: ['en', 'de-AT'],
  seenChange: ['2026-11-25'],
  doneBy: ['', 'Ada, workshop'],
  gauge: [{ edge: '320', ratio: '1.5' }],
  bills: [true, false],
  forOthers: [true, false],
  books: [true, false],
  bill: [
    {},
    {
      seller: 'A\nB',
      currency: 'EUR',
      prices: 'net',
      tax: '19',
      rounding: 'line',
      cash: '5',
      cost: { 'bill.kind.labour': '60', 'oil 10W-40': '12.50' },
      labour: '1.5',
    },
  ],
  due: [
    [],
    [{ id: 'tessaly-corda-570', name: 'Tessaly Corda 570', remind: '2027-05-03' }],
    [
      {
        id: 'b',
        name: 'The grey one',
        remind: '2027-05-03',
        read: '2026-11-30',
        day: '2027-06-01',
        at: '29200 km',
      },
    ],
  ],
  askedOdometer: ['2026-11-30'],
  notice: [false, { told: 0 }, { told: 1_790_000_000_000 }],
  backup: [{ time: '2026-11-25T12:00:00.000Z' }],
  backupLater: [{ time: '2026-11-25T12:00:00.000Z' }],
  erased: ['36c36de0-d328-4eeb-bd18-3226bbd92542'],
  planned: ['4f2a9c1e'],
  garage: ['4f2a9c1e'],
  promise: [{ time: '2026-11-25T12:00:00.000Z', kept: false }],
  ways: [{}, { '36c36de0-d328-4eeb-bd18-3226bbd92542': ['step', 'lay-out'], other: [] }],
  'calculation/density': [
    {},
    { temperature: '20', hot: true, bottles: [{ size: '1', count: '4', open: true }] },
  ],
};

test('what the page writes fits', () => {
  for (const [key, values] of Object.entries(written))
    for (const value of values) assert.ok(fits(key, value), `${key}: ${JSON.stringify(value)}`);
  const listed = [...known, 'calculation/density'].sort();
  assert.deepEqual(Object.keys(written).sort(), listed, 'and all of it is tried');
});

test('every setting that the page asks for has a shape', () => {
  const asked = modules.flatMap(({ ast, path }) =>
    nodes(ast, 'CallExpression')
      .filter(({ callee }) => /^(setting|saveSetting)$/.test(callee.name ?? callee.property?.name))
      .flatMap(({ arguments: [key] }) => (key?.type === 'Literal' ? [[path, key.value]] : [])),
  );
  assert.ok(asked.length > 5);
  for (const [path, key] of asked) assert.ok(known.includes(key), `${path} asks for ${key}`);
  for (const key of Object.keys(settings)) assert.ok(known.includes(key), key);
});

const poison = fc.oneof(
  fc.jsonValue(),
  fc.constantFrom(null, 0, -1, 1e300, '', 'x', [], {}, [null], { time: 7 }, { told: 1e300 }),
  fc.constantFrom('constructor', '__proto__', { constructor: 1 }, [[]], [{}], { cost: [] }),
  fc.constant('x'.repeat(200_000)),
);

test('any value of any setting: the settings load, and each is of its own kind', async () => {
  const first = structuredClone(settings);
  const kinds = new Map(Object.entries(first).map(([key, value]) => [key, typeof value]));
  await fc.assert(
    fc.asyncProperty(fc.dictionary(fc.constantFrom(...known), poison), async (planted) => {
      Object.assign(settings, first);
      await whole.removeAll();
      for (const [key, value] of Object.entries(planted)) await store.saveSetting(key, value);
      await loadSettings();
      await loadLimits();
      await Promise.resolve();
      for (const key of ['system', 'theme', 'doneBy', 'bills'])
        assert.equal(typeof settings[key], kinds.get(key), key);
      assert.ok(systems.includes(settings.system));
      assert.ok(['auto', 'light', 'dark'].includes(settings.theme));
      for (const key of known) {
        const value = await store.setting(key);
        assert.ok(value === undefined || fits(key, value), key);
      }
      const due = (await store.setting('due')) ?? [];
      due.map(({ id, name, remind }) => [id, name, remind].map((text) => text.trim()));
      const notice = await store.setting('notice');
      if (notice) new Date(notice.told).toISOString();
      for (const key of ['backup', 'backupLater'])
        new Date((await store.setting(key))?.time ?? 0).toISOString();
    }),
  );
});

test('a name that every object answers to is no setting', async () => {
  for (const key of ['constructor', 'toString', '__proto__', 'calculation', 'other']) {
    assert.ok(!fits(key, 'x'), key);
    await store.saveSetting(key, 'x');
    assert.equal(await store.setting(key), undefined, key);
  }
});

test('what is about this phone alone is known as such', () => {
  const here = [
    'askedOdometer',
    'backup',
    'backupLater',
    'erased',
    'planned',
    'garage',
    'promise',
    'ways',
  ];
  assert.deepEqual(known.filter(ofThisPhone), here);
});
