// The page's sentences by their ids, so that a reworded sentence breaks no test.
import { readFileSync } from 'node:fs';
import { defaultLanguage, entriesOf } from '../catalogue.js';

const read = (path) =>
  JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8'));

const catalogue = entriesOf(defaultLanguage);

/** The sentence of an entry; one that has several goes by the plural category of a count. */
function sentence(entry, values) {
  if (typeof entry === 'string') return entry;
  const count = values[entry.by ?? 'count'];
  return entry[new Intl.PluralRules(defaultLanguage.tag).select(count)];
}

/** The sentence of that id, its placeholders filled; "@id" stands for a sentence too. */
export function words(id, values = {}) {
  if (!(id in catalogue)) throw new Error(`the catalogue has no ${id}`);
  return sentence(catalogue[id], values).replace(/\{(\w+)\}/g, (_, name) => {
    if (!(name in values)) throw new Error(`${id} has no value for ${name}`);
    const value = String(values[name]);
    return value.startsWith('@') ? words(value.slice(1), values) : value;
  });
}

/** A sample card. */
export const sampleCard = (id) => read(`specs/cards/${id}.json`);

/** The text of a backup. */
export const sampleBackup = readFileSync(
  new URL('../../../testdata/backup-1.txt', import.meta.url),
  'utf8',
);

/** The changelog, the newest first. */
export const changelog = read('static/changelog.json');
