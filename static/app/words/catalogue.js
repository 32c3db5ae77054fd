import { file } from '../site/data.js';
import { own } from '../site/own.js';
import { dayText } from './dates.js';

/** @import { Language } from './language.js' */

// The word catalogue: every sentence that a person reads stands in it.
/**
 * A word of it: a sentence, or one for each plural category of {count}, or of the
 * value that it names.
 *
 * @typedef {string | { [category: string]: string }} Entry
 * @typedef {{ [name: string]: unknown }} Values for the placeholders
 */

/** @type {{ [id: string]: Entry }} */
let catalogue = {};
/** @type {Language} */
let language;
/** Finds the figures whose unit is a word and no symbol, such as "12 months". */
let figureInWords = /$^/g;

/**
 * Loads what the first screen says in a language; until then words show their ids.
 *
 * @param {Language} spoken
 */
export async function loadWords(spoken) {
  language = spoken;
  await loadWordsOf('first');
}

/**
 * Loads the part of it that only some screens need, such as 'bench' or 'cards'.
 *
 * @param {string} name
 */
export async function loadWordsOf(name) {
  const part = await file(`words/${language.tag}/${name}.json`); // others may be added meanwhile
  catalogue = { ...catalogue, ...part };
  const units = idsOf('unit.').join('|');
  if (units) figureInWords = new RegExp(`(\\d[\\d.,]*)[ \\u00a0](${units})(?!\\p{L})`, 'gu');
}

/**
 * Reports whether the catalogue has a word.
 *
 * @param {string} id
 */
export const hasWord = (id) => Object.hasOwn(catalogue, id);

/**
 * What follows a stem in the ids of the catalogue.
 *
 * @param {string} stem
 */
export const idsOf = (stem) =>
  Object.keys(catalogue)
    .filter((id) => id.startsWith(stem))
    .map((id) => id.slice(stem.length));

/**
 * The plural category of a count in the language, as the decimals of a text are
 * written: in English there is 1 litre, and there are 1.0 litres.
 *
 * @param {unknown} count
 */
function category(count) {
  const [, decimals = ''] = String(count).split('.');
  const rules = new Intl.PluralRules(language.tag, { minimumFractionDigits: decimals.length });
  return rules.select(Number(count));
}

/**
 * @param {Entry} entry
 * @param {Values} values
 * @returns {string}
 */
const form = (entry, values) =>
  typeof entry === 'string'
    ? entry
    : (own(entry, category(own(values, entry.by ?? 'count'))) ?? entry.other);

/**
 * The sentence of a word id, its {placeholders} filled. A value that begins
 * with "@" is itself a word id, and is filled from the other values.
 *
 * @param {string} id
 * @param {Values} [values]
 * @returns {string}
 */
export function t(id, values = {}) {
  const entry = own(catalogue, id);
  const sentence = entry === undefined ? id : form(entry, values);
  return sentence.replace(/(\{(\w+)\})(\.?)/g, (_, mark, name, stop) => {
    const value = own(values, name);
    if (value === undefined || value === null) {
      console.error(`${id}: nothing fills ${mark}`); // the tests hear it
      return mark + stop;
    }
    const others = Object.entries(values).filter(([other]) => other !== name);
    const filled = read(value, Object.fromEntries(others));
    return /[.?!…]\u2069?$/.test(filled) ? filled : filled + stop; // one stop is enough
  });
}

// A day as the core writes it.
const bareDay = /^\d{4}-\d\d-\d\d$/;

/**
 * A value as it is read: "@id" is looked up, nothing is said of what isn't there, and
 * everything else stands for itself.
 *
 * @param {unknown} value
 */
export const text = (value) => read(value ?? '', {});

/**
 * What somebody wrote, letter by letter: "@id" too.
 *
 * @param {string} written
 */
export const verbatim = (written) => inItsOwnDirection(written);

/**
 * @param {unknown} value
 * @param {Values} others
 */
function read(value, others) {
  const s = String(value);
  if (bareDay.test(s)) return inItsOwnDirection(dayText(s));
  if (s.startsWith('@') && hasWord(s.slice(1))) return t(s.slice(1), others);
  const figure = s.replace(figureInWords, (_, count, unit) => t(`unit.${unit}`, { count }));
  // A number stays with its unit at the end of a line.
  return inItsOwnDirection(figure.replace(/(\d) /g, '$1\u00a0'));
}

// Marks that turn the direction of writing: left open in a name of a card they
// would turn the figures after it too.
const turning = /[\u202a-\u202e\u2066-\u2069]/g;
const isolated = /[\u2066-\u2068][^\u2066-\u2069]*\u2069/g;

/**
 * A value turns nothing round it; and among words from right to left it is not
 * turned by them: "25 N·m" stays in one piece (U+2068, first strong isolate).
 *
 * @param {string} value
 */
function inItsOwnDirection(value) {
  if (!value || language.dir !== 'rtl') return value.replace(turning, '');
  let open = value; // what is left of it without the parts that are isolated already
  while (open.search(isolated) >= 0) open = open.replace(isolated, '');
  return `\u2068${open.search(turning) < 0 ? value : value.replace(turning, '')}\u2069`;
}
