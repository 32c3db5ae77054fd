// Two editions of the site for the update tests: as it is, and with every kind of
// file changed a little.
import { appendFile, cp, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { run, temporaryFolder } from './launch.js';

const sources = fileURLToPath(new URL('../..', import.meta.url));
const firstWorker = fileURLToPath(new URL('first-worker', import.meta.url));

/**
 * Exports an edition of the site into a folder, and resolves to it: `changes` gets the
 * folder of its sources and changes what it likes there; `args` are the builder's.
 */
export async function exportEdition(t, changes = async () => {}, ...args) {
  const dir = await temporaryFolder(t);
  const changed = join(dir, 'static');
  const left = ['node_modules', 'test'].map((name) => join(sources, name));
  await cp(sources, changed, { recursive: true, filter: (path) => !left.includes(path) });
  await symlink(left[0], join(changed, 'node_modules'));
  await changes(changed);
  const [archive, folder] = [join(dir, 'site.zip'), join(dir, 'site')];
  await run('builder', '-static', changed, '-out', archive, ...args);
  await run('tidysump', '-site', archive, '-export', folder);
  return folder;
}

/** Changes every kind of file a little; the page then knows its edition's name. */
const alter = (name) => async (changed) => {
  await appendFile(join(changed, 'app/main.js'), `\nglobalThis.edition = '${name}';\n`);
  await appendFile(join(changed, 'app/screens.js'), `\nglobalThis.later = '${name}';\n`);
  await appendFile(join(changed, 'app/core/worker.js'), `\nglobalThis.edition = '${name}';\n`);
  for (const style of ['app/main.css', 'app/screens.css'])
    await appendFile(join(changed, style), `\n.edition-${name} {\n  top: 0;\n}\n`);
};

/** Exports both editions; resolves to their folders, [now, next]. */
export const exportEditions = async (t) => [
  await exportEdition(t),
  await exportEdition(t, alter('next')),
];

/** Exports one with the service worker, and the page's part for it, of the first releases. */
export const exportFirstEdition = (t) =>
  exportEdition(t, async (changed) => {
    await cp(join(firstWorker, 'sw.js'), join(changed, 'sw.js'));
    await cp(join(firstWorker, 'offline.js'), join(changed, 'app/phone/offline.js'));
  });
