import assert from 'node:assert/strict';
import { test } from 'node:test';
import { compare } from './check.js';
import { cardTexts, mostCards, packText } from './split.js';

const pack = (cards, more = '') =>
  `{"format":"tidysump-cards","version":1${more},"cards":${cards}}`;

const whole = {
  'no card': ['[]', []],
  'two cards': ['[{"a":1},{"b":2}]', ['{"a":1}', '{"b":2}']],
  'spaces and line ends': ['[\n { "a" : [1, 2] } ,\n 2 ]', ['{ "a" : [1, 2] }', '2']],
  'brackets and quotes in texts': [
    '[{"a":"]}\\",["},{"\\\\":"\\\\"}]',
    ['{"a":"]}\\",["}', '{"\\\\":"\\\\"}'],
  ],
  'a name twice in a card': ['[{"a":1,"a":2}]', ['{"a":1,"a":2}']],
  'lists named cards within a card': ['[{"cards":[1,2]}]', ['{"cards":[1,2]}']],
  'a missing card': ['[1,,2]', ['1', '', '2']],
  'a comma too many': ['[1,]', ['1', '']],
  'a list deeper than any parser': [
    `[${'['.repeat(1e5)}${']'.repeat(1e5)}]`,
    [`${'['.repeat(1e5)}${']'.repeat(1e5)}`],
  ],
};

for (const [name, [cards, texts]] of Object.entries(whole)) {
  test(`a pack with ${name} is cut into the texts as they stand`, () => {
    assert.deepEqual(cardTexts(pack(cards)), { texts });
    assert.deepEqual(cardTexts(`\ufeff ${pack(cards, ', "made" : "]"')}\n`), { texts });
  });
}

test('a single card is its own text', () => {
  const card = '{"format":"tidysump-card","circuits":[{"id":"a"}]}';
  assert.deepEqual(cardTexts(card), { texts: [card] });
});

test('a pack that is written is read as the same cards', () => {
  assert.deepEqual(cardTexts(packText(['{"a":"é"}', '{}'])), { texts: ['{"a":"é"}', '{}'] });
});

const faulty = {
  'pack.empty': ['', ' \n'],
  'pack.not-one': [
    'hello',
    '[{"a":1}]',
    '{"format":"other","version":1,"cards":[]}',
    pack('[]', ',"cards":[]'),
    pack('[1]', ',"version":1'),
  ],
  'pack.version': ['{"format":"tidysump-cards","version":2,"cards":[]}'],
  'pack.broken': [
    pack('[{"a":1}'),
    pack('[{"a":1]}'),
    pack('["a]'),
    `${pack('[1]')} {}`,
    '{"a":1},{"b":2}',
    pack('[1]', ',made'),
    '{'.repeat(1e5),
  ],
  'pack.too-many': [pack(`[${'0,'.repeat(mostCards)}0]`)],
};

for (const [fault, texts] of Object.entries(faulty)) {
  for (const text of texts)
    test(`${fault}: ${JSON.stringify(text.slice(0, 60))}`, () => {
      assert.deepEqual(cardTexts(text), { fault });
    });
}

test(`a pack of ${mostCards} cards is not too large`, () => {
  assert.equal(cardTexts(pack(`[${'0,'.repeat(mostCards - 1)}0]`)).texts.length, mostCards);
});

test('cards are compared with those that are here, and with those before them', () => {
  const entry = (id, text) => ({ text, bike: { id }, findings: [] });
  const entries = [
    entry('a', 'a1'),
    entry('a', 'a1'),
    entry('a', 'a2'),
    entry('b', 'b1'),
    entry('b', 'b2'),
    { findings: [{ code: 'bad-id' }] },
  ];
  const status = compare(entries, [{ id: 'b', text: 'b1' }]).map((e) => e.status);
  assert.deepEqual(status, ['new', 'same', 'changed', 'same', 'changed', 'refused']);
});
