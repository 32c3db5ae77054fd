import { file } from '../site/data.js';

// The word catalogue: every sentence that a person reads stands in it.
let catalogue = {};
let language;

/** Loads what the first screen says in a language; until then words show their ids. */
export async function loadWords(spoken) {
  language = spoken;
  await loadWordsOf('first');
}

/** Loads the part of it that only some screens need, such as 'bench' or 'cards'. */
export async function loadWordsOf(name) {
  const part = await file(`words/${language.tag}/${name}.json`); // others may be added meanwhile
  catalogue = { ...catalogue, ...part };
}

/** Reports whether the catalogue has a word. */
export const hasWord = (id) => Object.hasOwn(catalogue, id);

/** What follows a stem in the ids of the catalogue. */
export const idsOf = (stem) =>
  Object.keys(catalogue)
    .filter((id) => id.startsWith(stem))
    .map((id) => id.slice(stem.length));

/**
 * The plural category of a count in the language, as the decimals of a text are
 * written: in English there is 1 litre, and there are 1.0 litres.
 */
function category(count) {
  const [, decimals = ''] = String(count).split('.');
  const rules = new Intl.PluralRules(language.tag, { minimumFractionDigits: decimals.length });
  return rules.select(count);
}

/** An entry is a sentence, or has one for each plural category of {count}, or of the value that it names. */
const form = (entry, values) =>
  typeof entry === 'string' ? entry : (entry[category(values[entry.by ?? 'count'])] ?? entry.other);

/**
 * The sentence of a word id, its {placeholders} filled. A value that begins
 * with "@" is itself a word id, and is filled from the other values.
 */
export function t(id, values = {}) {
  const sentence = hasWord(id) ? form(catalogue[id], values) : id;
  return sentence.replace(/\{(\w+)\}/g, (mark, name) => {
    if (!Object.hasOwn(values, name)) return mark;
    const { [name]: value, ...others } = values;
    return read(value, others);
  });
}

/** A value as it is read: "@id" is looked up, everything else stands for itself. */
export const text = (value) => read(value, {});

// Marks that turn the direction of writing: left open in a name of a card they
// would turn the figures after it too.
const turning = /[\u202a-\u202e\u2066-\u2069]/g;

function read(value, others) {
  const s = String(value);
  if (s.startsWith('@') && hasWord(s.slice(1))) return t(s.slice(1), others);
  // A number stays with its unit at the end of a line.
  return s.replace(turning, '').replace(/(\d) /g, '$1\u00a0');
}
