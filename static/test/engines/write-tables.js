// Writes what the last `make test-engines` saw into the tables of README.md and
// DEVELOPERS.md; all engines must have been there, and every line of each as expected.
import { readFileSync, writeFileSync } from 'node:fs';
import { engineNames } from './driver.js';
import { tables, withTable } from './table.js';
import { linesOf } from './walk.js';

const root = new URL('../../../', import.meta.url);
const seen = JSON.parse(readFileSync(new URL('build/engines.json', root), 'utf8'));

for (const name of engineNames)
  for (const { id } of linesOf(name))
    if (!seen[name]?.lines[id]) throw new Error(`make test-engines did not see "${id}" in ${name}`);

for (const [file, rowsOf] of Object.entries(tables)) {
  const path = new URL(file, root);
  writeFileSync(path, withTable(readFileSync(path, 'utf8'), rowsOf(seen)));
}
