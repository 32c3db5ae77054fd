// The page's sentences by their ids, so that a reworded sentence breaks no test.
import { readdirSync, readFileSync } from 'node:fs';
import { defaultLanguage, entriesOf } from '../catalogue.js';

const read = (path) =>
  JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8'));

let language = defaultLanguage;
let catalogue = entriesOf(language);

/** Has the sentences read in that language from now on. */
export function readIn(other) {
  language = other;
  catalogue = entriesOf(other);
}

/** The sentence of an entry; one that has several goes by the plural category of a count. */
function sentence(entry, values) {
  if (typeof entry === 'string') return entry;
  const count = values[entry.by ?? 'count'];
  return entry[new Intl.PluralRules(language.tag).select(count)];
}

/** A value as the page puts it into a sentence: among words from right to left it stands by itself. */
const filled = (value) => (language.dir === 'rtl' ? `\u2068${value}\u2069` : value);

/** What a sentence says between its placeholders, for one whose values are not known. */
export function pieces(id) {
  return catalogue[id].split(/\s*\{\w+\}\s*/).filter(Boolean);
}

/** The sentence of that id, its placeholders filled; "@id" stands for a sentence too. */
export function words(id, values = {}) {
  if (!(id in catalogue)) throw new Error(`the catalogue has no ${id}`);
  return sentence(catalogue[id], values).replace(/\{(\w+)\}(\.?)/g, (_, name, stop) => {
    if (!(name in values)) throw new Error(`${id} has no value for ${name}`);
    const given = String(values[name]);
    const value = given.startsWith('@') ? words(given.slice(1), values) : filled(inWords(given));
    return /[.?!…]\u2069?$/.test(value) ? value : value + stop;
  });
}

/** A value as the page writes it: a bare day of the core's is one in words. */
const inWords = (value) =>
  /^\d{4}-\d\d-\d\d$/.test(value) ? dayWords(new Date(`${value}T00:00`)) : value;

/** A day as the page writes it. */
export const dayWords = (date) =>
  words('date.day', {
    day: date.getDate(),
    month: new Intl.DateTimeFormat(language.tag, { month: 'short' }).format(date),
    year: date.getFullYear(),
  });

/** A sample card. */
export const sampleCard = (id) => read(`specs/cards/${id}.json`);

/** All sample cards. */
export const sampleCards = () =>
  readdirSync(new URL('../../../specs/cards', import.meta.url)).map((file) =>
    sampleCard(file.replace('.json', '')),
  );

/** The text of a backup. */
export const sampleBackup = readFileSync(
  new URL('../../../testdata/backup-2.txt', import.meta.url),
  'utf8',
);

/** The changelog, the newest first. */
export const changelog = read('static/changelog.json');
