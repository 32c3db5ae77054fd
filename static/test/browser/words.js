// The page's sentences by their ids, so that a reworded sentence breaks no test.
import { readdirSync, readFileSync } from 'node:fs';

const read = (path) =>
  JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8'));

const folder = new URL('../../../specs/words/', import.meta.url);
const parts = readdirSync(folder).map((name) => read(`specs/words/${name}`));
const catalogue = Object.assign({}, ...parts);

/** The sentence of that id, its placeholders filled; "@id" stands for a sentence too. */
export function words(id, values = {}) {
  if (!(id in catalogue)) throw new Error(`the catalogue has no ${id}`);
  return catalogue[id].replace(/\{(\w+)\}/g, (_, name) => {
    if (!(name in values)) throw new Error(`${id} has no value for ${name}`);
    const value = String(values[name]);
    return value.startsWith('@') ? words(value.slice(1), values) : value;
  });
}

/** A sample card. */
export const sampleCard = (id) => read(`specs/cards/${id}.json`);
