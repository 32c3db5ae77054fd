// The sample cards that come with the site.
import { readdirSync } from 'node:fs';
import { sampleCard } from '../browser/words.js';

export const samples = readdirSync(new URL('../../../specs/cards', import.meta.url)).map((file) =>
  sampleCard(file.replace('.json', '')),
);
