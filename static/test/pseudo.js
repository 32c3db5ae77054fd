// Pseudo-languages: the default's words, made strange by rule. What is cut off,
// what was not taken from the catalogue and what is laid out for one direction of
// writing is seen in them at once, and no translator is needed. Their tags are
// those of CLDR. They are written into a folder of words for a site that is built
// for a test, and are never shipped.
import { cp, mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defaultLanguage } from './catalogue.js';

const latin = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ';
const accented = 'åƀçðéƒĝĥîĵķļɱñöþǫŕšţûṽŵẋýžÅɃÇÐÉƑĜĤÎĴĶĻⱮÑÖÞǪŔŠŢÛṼŴẊÝŽ';
const arabic = 'ابصديفجهىژكلمنوپقرستؤڤشخئزابصديفجهىژكلمنوپقرستؤڤشخئز';

/** A text with each letter of one alphabet in place of the same of the other. */
const inLetters = (text, letters) =>
  text.replace(/[a-z]/gi, (letter) => [...letters][latin.indexOf(letter)]);

const share = 0.4; // German is longer than English by so much

/** A word with its vowels drawn out, so that it stays one word and is longer by the share. */
function drawnOut(word) {
  const letters = [...word];
  const vowels = letters.flatMap((letter, at) => (/[aeiouy]/i.test(letter) ? at : []));
  const drawn = vowels.length ? vowels : [letters.length - 1];
  for (let more = Math.ceil(word.length * share), n = 0; more > 0; more--, n++)
    letters[drawn[n % drawn.length]] += word[drawn[n % drawn.length]].toLowerCase();
  return letters.join('');
}

// Figures keep their order among words from right to left, if a translator says so.
const figure = /\d+(?:[-–/]\d+)+/g;

/**
 * {tag, name, dir, letters, stretch}: the one is longer and accented, the other is
 * written from right to left.
 */
const rules = [
  { tag: 'en-XA', name: 'Accented', dir: 'ltr', letters: accented, stretch: drawnOut },
  { tag: 'ar-XB', name: 'Mirrored', dir: 'rtl', letters: arabic, stretch: (word) => word },
];

/** A sentence in brackets and other letters; its placeholders stay. */
export function pseudoSentence(sentence, { dir, letters, stretch }) {
  const parts = sentence.split(/(\{\w+\})/);
  const change = (text) => {
    const own = dir === 'rtl' ? text.replace(figure, '\u2068$&\u2069') : text;
    return inLetters(own.replace(/[a-z]+/gi, stretch), letters);
  };
  return `[${parts.map((part, n) => (n % 2 ? part : change(part))).join('')}]`;
}

/** An entry of the catalogue; one with forms has those of the pseudo-language's own categories. */
function pseudoEntry(entry, rule) {
  if (typeof entry === 'string') return pseudoSentence(entry, rule);
  const { by, ...forms } = entry;
  const { pluralCategories } = new Intl.PluralRules(rule.tag).resolvedOptions();
  const own = pluralCategories.map((category) => [
    category,
    pseudoSentence(forms[category] ?? forms.other, rule),
  ]);
  return { ...(by && { by }), ...Object.fromEntries(own) };
}

const pseudoPart = (rule) => (part) => {
  const [name, entries] = part;
  const own = Object.entries(entries).map(([id, entry]) => [id, pseudoEntry(entry, rule)]);
  return [name, Object.fromEntries(own)];
};

/** The pseudo-languages, as catalogue.js gives the real ones. */
export const pseudoLanguages = rules.map((rule) => ({
  tag: rule.tag,
  name: pseudoSentence(rule.name, rule),
  dir: rule.dir,
  parts: defaultLanguage.parts.map(pseudoPart(rule)),
}));

/** Writes a folder of words, as the builder takes it: the default language and these. */
export async function writePseudoWords(folder) {
  const theirs = fileURLToPath(
    new URL(`../../specs/words/${defaultLanguage.tag}`, import.meta.url),
  );
  await cp(theirs, join(folder, defaultLanguage.tag), { recursive: true });
  for (const { tag, name, dir, parts } of pseudoLanguages) {
    await mkdir(join(folder, tag));
    for (const [part, content] of [['language', { name, dir }], ...parts])
      await writeFile(join(folder, tag, `${part}.json`), JSON.stringify(content));
  }
}
