import assert from 'node:assert/strict';
import { test } from 'node:test';
import { languageFor } from './language.js';

const spoken = ['xa', 'de', 'pt-BR', 'zh-Hant'].map((tag) => ({ tag }));

const cases = [
  // wishes, language
  [[], 'xa'],
  [['de'], 'de'],
  [['de-AT'], 'de'],
  [['DE-at-1996'], 'de'],
  [['fr', 'de'], 'de'],
  [['pt-br', 'de'], 'pt-BR'],
  [['pt', 'de'], 'de'],
  [['pt'], 'xa'],
  [['zh-Hant-TW'], 'zh-Hant'],
  [['zh-TW'], 'xa'],
  [['d', 'de-'], 'de'],
  [['xa', 'de'], 'xa'],
  [[undefined, { de: 1 }, 'de'], 'de'],
];

for (const [wishes, want] of cases) {
  test(`wished for ${wishes.map(String).join(', ') || 'none'}: ${want}`, () =>
    assert.equal(languageFor(wishes, spoken).tag, want));
}
