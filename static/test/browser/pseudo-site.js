// The site with the pseudo-languages beside the default one.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writePseudoWords } from '../pseudo.js';
import { run } from './launch.js';

/** Builds it; resolves to the path of its archive, and to what removes it. */
export async function buildPseudoSite() {
  const folder = await mkdtemp(join(tmpdir(), 'tidysump-'));
  const [words, archive] = ['words', 'site.zip'].map((name) => join(folder, name));
  await writePseudoWords(words);
  await run('builder', '-words', words, '-out', archive);
  return { archive, remove: () => rm(folder, { recursive: true, force: true }) };
}

/** Runs in the page, before it: its phone is set to these languages, the first before all. */
export const setPhone = (...tags) =>
  Object.defineProperty(navigator, 'languages', { get: () => tags });
