import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { screens } from '../browser/screens.js';
import { Walker } from './walk.js';

/**
 * Makes the stories of the states that `wanted` picks by their names, one after the
 * other, into a folder; stories.json there grows with each. Resolves to them; those
 * to which no way leads are told by `failed(name, error)` and left out.
 */
export async function makeStories(wanted, browser, url, folder, failed) {
  const walker = new Walker(browser, url, folder);
  const ways = Object.values(screens)
    .flatMap(Object.entries)
    .filter(([name]) => wanted(name));
  const made = { stories: [], left: ways.length };
  const write = () => writeFile(join(folder, 'stories.json'), JSON.stringify(made));
  await write();
  for (const [name, way] of ways) {
    try {
      made.stories.push(await walker.walk(name, way));
    } catch (error) {
      failed(name, error);
    }
    made.left--;
    await write();
  }
  return made.stories;
}
