// Starts any of the engines that the page is tried in.
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { NotHere } from './engine.js';

export { NotHere };

/** What the page is tried on. */
const phone = { width: 360, height: 740 };

/** Name of the engine -> its file, and what starts it there. */
const engines = {
  chromium: async () => (await import('./chromium.js')).startChromium,
  firefox: async () => (await import('./firefox.js')).startFirefox,
  webkit: async () => (await import('./webkit.js')).startWebKit,
  'webkit-old': async () => (await import('./webkit-old.js')).startOldWebKit,
};

/** The names of all engines. */
export const engineNames = Object.keys(engines);

/**
 * Starts an engine; throws NotHere with the reason where it can't be had. `profile` is a
 * folder in which all lasts that the page stores, `size` that of the page, {width, height}.
 */
export async function startEngine(name, { profile, size = phone }) {
  if (!Object.hasOwn(engines, name)) throw new NotHere(`There is no engine "${name}".`);
  const start = await engines[name]();
  const downloads = join(profile, 'downloads');
  await mkdir(downloads, { recursive: true });
  return start({ profile, downloads, size });
}
