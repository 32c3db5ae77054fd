// An edition of the site whose core calls a step otherwise, as a later release may.
import { execFile } from 'node:child_process';
import { copyFile, cp, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { exportEdition } from './editions.js';
import { temporaryFolder } from './launch.js';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Exports an edition in which the step `was` is called `is`; `known` says whether its table of renames has it. */
export async function exportRenamed(t, was, is, known) {
  const dir = await temporaryFolder(t);
  const table = known ? `renames = []rename{{"${was}", "${is}"}}` : 'renames = []rename{}';
  const changes = {
    'internal/plan/recipe.go': [`word: "${was}"`, `word: "${is}"`],
    'internal/plan/sequence.go': [`"${was}"`, `"${is}"`],
    'internal/plan/resume.go': ['renames = []rename{}', table],
  };
  const overlay = { Replace: {} };
  for (const [path, [from, to]] of Object.entries(changes)) {
    const source = await readFile(join(root, path), 'utf8');
    if (!source.includes(from)) throw new Error(`${path} has no ${from}`);
    const changed = join(dir, path.replaceAll('/', '-'));
    await writeFile(changed, source.replace(from, to));
    overlay.Replace[join(root, path)] = changed;
  }
  await writeFile(join(dir, 'overlay.json'), JSON.stringify(overlay));
  const flags = ['-trimpath', '-gcflags=all=-l', '-ldflags=-s -w -buildid='];
  await promisify(execFile)(
    'go',
    [
      'build',
      '-overlay',
      join(dir, 'overlay.json'),
      ...flags,
      '-o',
      join(dir, 'core.wasm'),
      './wasm',
    ],
    { cwd: root, env: { ...process.env, GOOS: 'js', GOARCH: 'wasm' } },
  );
  for (const beside of ['wasm_exec.js', 'licences.txt'])
    await copyFile(join(root, 'build', beside), join(dir, beside));
  const words = join(dir, 'words');
  await cp(join(root, 'specs/words'), words, { recursive: true });
  const work = join(words, 'en/work.json');
  const entries = (await readFile(work, 'utf8')).replaceAll(`"step.${was}`, `"step.${is}`);
  await writeFile(work, entries);
  return exportEdition(
    t,
    undefined,
    '-whole-core',
    '-core',
    join(dir, 'core.wasm'),
    '-words',
    words,
  );
}
