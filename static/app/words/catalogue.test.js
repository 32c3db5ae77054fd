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
  ['ring', { ring: '@ring' }, 'round round {ring}'],
];

for (const [id, values, want] of sentences) {
  test(`${id} with ${JSON.stringify(values)}`, () => assert.equal(t(id, values), want));
}

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

test('parts that are loaded side by side are all there', async (context) => {
  context.mock.method(globalThis, 'fetch', async () => Response.json({ [`part.${parts++}`]: 'x' }));
  let parts = 0;
  await Promise.all(['a', 'b', 'c'].map(loadWordsOf));
  for (const id of ['plain', 'part.0', 'part.1', 'part.2']) assert.ok(hasWord(id), id);
});
