// Where the programs are that drive the engines.
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { NotHere } from './engine.js';

const finder = fileURLToPath(new URL('../../../.ci/engines', import.meta.url));

// Make has told, after it had what is missing installed; a test that is run without make
// takes what is here.
const told = process.env.ENGINE_PROGRAMS ?? execFileSync(finder, ['here'], { encoding: 'utf8' });
const programs = new Map(
  told
    .split('\n')
    .filter(Boolean)
    .map((line) => line.split(' ')),
);

/** The program that drives an engine. */
export function programOf(name) {
  if (!programs.has(name)) throw new NotHere('what it needs is not here; .ci/engines names it');
  return programs.get(name);
}
