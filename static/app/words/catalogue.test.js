import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import { hasWord, loadWords, loadWordsOf, t, text } from './catalogue.js';
import { defaultLanguage } from '../../test/catalogue.js';

const catalogue = {
  plain: 'Nothing to fill.',
  poured: '{volume} of {grade}, {volume}',
  engine: 'engine',
  open: 'Open it: {of}',
  without: 'Closed without: {step}',
  ring: 'round {ring}',
  over: 'Not told: {step}. Mend it.',
  asks: 'Go on?',
  days: { one: '{count} day', other: '{count} days' },
  screws: { by: 'turned', one: 'the screw', other: 'all {turned} screws' },
  after: 'after {count}: {days}',
  'unit.months': { one: '{count} span', other: '{count} spans' },
};

before(async (context) => {
  context.mock.method(globalThis, 'fetch', async () => Response.json(catalogue));
  await loadWords(defaultLanguage);
});

const sentences = [
  // id, values, sentence
  ['plain', undefined, 'Nothing to fill.'],
  ['no.such.word', undefined, 'no.such.word'],
  ['constructor', undefined, 'constructor'],
  ['poured', { volume: 'two', grade: '10W-40' }, 'two of 10W-40, two'],
  ['poured', { volume: 0, grade: '' }, '0 of , 0'],
  ['poured', { grade: 'x' }, '{volume} of x, {volume}'],
  ['poured', { volume: '$& $1', grade: '{volume}' }, '$& $1 of {volume}, $& $1'],
  ['open', { of: '@engine' }, 'Open it: engine'],
  ['without', { step: '@open', of: '@engine' }, 'Closed without: Open it: engine'],
  ['without', { step: '@open' }, 'Closed without: Open it: {of}'],
  ['open', { of: '@nobody@example' }, 'Open it: @nobody@example'],
  ['open', { of: '@constructor' }, 'Open it: @constructor'],
  ['over', { step: '@asks' }, 'Not told: Go on? Mend it.'],
  ['over', { step: 'He said so.' }, 'Not told: He said so. Mend it.'],
  ['over', { step: 'that' }, 'Not told: that. Mend it.'],
  ['ring', { ring: '@ring' }, 'round round {ring}'],
  ['days', { count: 1 }, '1 day'],
  ['days', { count: '1' }, '1 day'],
  ['days', { count: '1.0' }, '1.0 days'],
  ['days', { count: 0 }, '0 days'],
  ['days', { count: 12 }, '12 days'],
  ['days', { count: 'some' }, 'some days'],
  ['days', {}, '{count} days'],
  ['screws', { turned: '1', count: 3 }, 'the screw'],
  ['screws', { turned: '3', count: 1 }, 'all 3 screws'],
  ['after', { count: 1, days: '@days' }, 'after 1: 1 day'],
];

for (const [id, values, want] of sentences) {
  test(`${id} with ${JSON.stringify(values)}`, (context) => {
    context.mock.method(console, 'error', () => {});
    assert.equal(t(id, values), want);
  });
}

test('a value that is missing is told, and never printed', (context) => {
  const told = context.mock.method(console, 'error', () => {});
  for (const missing of [undefined, null])
    assert.equal(t('open', { of: missing }), 'Open it: {of}', `${missing}`);
  assert.deepEqual(
    told.mock.calls.map((call) => call.arguments),
    Array(2).fill(['open: nothing fills {of}']),
  );
});

test('a unit that is a word has the form of its count', () => {
  assert.equal(text('12 months'), '12\u00a0spans');
  assert.equal(t('open', { of: 'after 1 months' }), 'Open it: after 1\u00a0span');
  assert.equal(text('0.5–0.75 months'), '0.5–0.75\u00a0spans');
  for (const other of ['12 monthsx', 'months', '12 mm'])
    assert.equal(text(other).replace('\u00a0', ' '), other);
});

test('nothing is said of what is not there', () => {
  for (const nothing of [undefined, null, '']) assert.equal(text(nothing), '', `${nothing}`);
  assert.equal(text(0), '0');
});

test('a number stays on one line with its unit', () => {
  assert.equal(t('open', { of: '2.5 L of oil' }), 'Open it: 2.5\u00a0L of oil');
  assert.equal(text('29 N·m'), '29\u00a0N·m');
});

test('a name cannot turn round the figures after it', () => {
  assert.equal(t('open', { of: 'left \u202eplug\u2066' }), 'Open it: left plug');
});

test('only the catalogue knows words', () => {
  assert.ok(hasWord('plain'));
  for (const id of ['nothing', 'toString', '__proto__']) assert.ok(!hasWord(id));
});

test('among words from right to left a value keeps its own direction', async () => {
  await loadWords({ tag: 'ar', dir: 'rtl' });
  const [begin, end] = ['\u2068', '\u2069'];
  const one = t('open', { of: '25 N·m' });
  assert.equal(one, `Open it: ${begin}25\u00a0N·m${end}`);
  assert.equal(text(one), begin + one + end, 'what is isolated stays so');
  assert.equal(t('open', { of: '@engine' }), 'Open it: engine', 'a word needs none');
  for (const hostile of ['plug\u2067', 'plug\u2069', '\u2069plug\u2067', '\u202eplug'])
    assert.equal(text(hostile), `${begin}plug${end}`, JSON.stringify(hostile));
  await loadWords(defaultLanguage);
});

test('each language has forms of its own', async (context) => {
  const days = { one: 'a', few: 'b', many: 'c', other: 'd' };
  context.mock.method(globalThis, 'fetch', async () => Response.json({ days }));
  await loadWords({ tag: 'pl' });
  const said = ['1', '2', '5', '22', '1.5'].map((count) => t('days', { count }));
  assert.deepEqual(said, ['a', 'b', 'c', 'b', 'd']);
  await loadWords({ tag: 'ja' }); // one form for all, and the default's words have more
  assert.equal(t('days', { count: 1 }), 'd');
});

test('parts that are loaded side by side are all there', async (context) => {
  context.mock.method(globalThis, 'fetch', async () => Response.json({ [`part.${parts++}`]: 'x' }));
  let parts = 0;
  await Promise.all(['a', 'b', 'c'].map(loadWordsOf));
  for (const id of ['plain', 'part.0', 'part.1', 'part.2']) assert.ok(hasWord(id), id);
});
