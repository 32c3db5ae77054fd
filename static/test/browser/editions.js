// Two editions of the site for the update tests: as it is, and with every kind of
// file changed a little.
import { appendFile, cp, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { run, temporaryFolder } from './launch.js';

const sources = fileURLToPath(new URL('../..', import.meta.url));

/** Exports both editions; resolves to their folders, [now, next]. */
export async function exportEditions(t) {
  const dir = await temporaryFolder(t);
  const changed = join(dir, 'static');
  const left = ['node_modules', 'test'].map((name) => join(sources, name));
  await cp(sources, changed, { recursive: true, filter: (path) => !left.includes(path) });
  await symlink(left[0], join(changed, 'node_modules'));
  await appendFile(join(changed, 'app/main.js'), `\nglobalThis.edition = 'next';\n`);
  await appendFile(join(changed, 'app/core/worker.js'), `\nglobalThis.edition = 'next';\n`);
  await appendFile(join(changed, 'app/main.css'), `\n.edition-next {\n  top: 0;\n}\n`);
  const folders = [join(dir, 'now'), join(dir, 'next')];
  for (const [i, from] of [sources, changed].entries()) {
    const archive = `${folders[i]}.zip`;
    await run('builder', '-static', from, '-out', archive);
    await run('tidysump', '-site', archive, '-export', folders[i]);
  }
  return folders;
}
