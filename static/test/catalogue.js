// The word catalogue as it lies in specs/words: for the tests, which say no
// language's tag themselves.
import { readdirSync, readFileSync } from 'node:fs';

const folder = new URL('../../specs/words/', import.meta.url);

const read = (path) => JSON.parse(readFileSync(new URL(path, folder), 'utf8'));

/** A language: {tag, name, dir, isDefault, parts}; parts are [name, entries] pairs. */
function language(tag) {
  const names = readdirSync(new URL(`${tag}/`, folder)).map((file) => file.replace('.json', ''));
  const { name, dir, default: isDefault = false } = read(`${tag}/language.json`);
  const parts = names
    .filter((part) => part !== 'language')
    .map((part) => [part, read(`${tag}/${part}.json`)]);
  return { tag, name, dir, isDefault, parts };
}

/** All languages that are built in. */
export const languages = readdirSync(folder).map(language);

export const defaultLanguage = languages.find(({ isDefault }) => isDefault);

/** All entries of a language, whatever their part. */
export const entriesOf = ({ parts }) => Object.assign({}, ...parts.map(([, entries]) => entries));
