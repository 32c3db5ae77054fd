// What must hold of every language of the catalogue, the default's own words too.
// That it has no word that the default lacks is tested in specs.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { defaultLanguage, entriesOf, languages } from './catalogue.js';

const ours = entriesOf(defaultLanguage);

/** The forms of an entry by plural category; a sentence has no others. */
const formsOf = ({ by = 'count', ...forms }) => ({ by, forms });

const isSentence = (entry) => typeof entry === 'string';

const placeholders = (sentence) =>
  [...new Set(sentence.match(/\{\w+\}/g))].sort().join(' ') || 'no placeholder';

/** Whether all counts of that category are one and the same, so that a form of it need not say it. */
function saysItself(tag, category) {
  const rules = new Intl.PluralRules(tag);
  const counts = [0.5, 1.5, ...Array(1000).keys()].filter((n) => rules.select(n) === category);
  return counts.length === 1;
}

for (const language of languages) {
  const { tag, isDefault } = language;
  const entries = Object.entries(entriesOf(language));
  const categories = new Intl.PluralRules(tag).resolvedOptions().pluralCategories.sort();

  test(`${tag}: an entry with forms has one for each plural category: ${categories}`, () => {
    for (const [id, entry] of entries) {
      if (isSentence(entry)) continue;
      const { forms } = formsOf(entry);
      assert.deepEqual(Object.keys(forms).sort(), categories, id);
    }
    assert.ok(!isDefault || entries.some(([, entry]) => !isSentence(entry)), 'some have forms');
  });

  test(`${tag}: every form has the placeholders of the default's sentence`, () => {
    for (const [id, entry] of entries) {
      const want = placeholders(ours[id].other ?? ours[id]);
      if (isSentence(entry)) {
        assert.equal(placeholders(entry), want, id);
        continue;
      }
      const { by, forms } = formsOf(entry);
      for (const [category, form] of Object.entries(forms)) {
        // The default's words stand in for another language's, whose categories are others.
        const may = !isDefault && !form.includes(`{${by}}`) && saysItself(tag, category);
        assert.equal(placeholders(may ? `${form}{${by}}` : form), want, `${id}, ${category}`);
      }
    }
  });

  test(`${tag}: a count has one name in a sentence, that on which the form hangs`, () => {
    for (const [id, entry] of entries) {
      if (isSentence(entry) || entry.by === undefined) continue;
      assert.notEqual(entry.by, 'count', `${id}: {count} need not be named`);
      assert.ok(entry.other.includes(`{${entry.by}}`), `${id}: no {${entry.by}} in it`);
    }
  });
}

test('a form says the number unless its category is of one number only', () => {
  assert.equal(saysItself('ar', 'two'), true);
  assert.equal(saysItself('ar', 'few'), false);
  assert.equal(saysItself('ru', 'one'), false, '21 is one too');
});
