// Backups as a hostile hand might write them: whole, sealed, and anything inside.
import { digestOf, seal } from '../app/backup/seal.js';

export const made = '2026-11-25T12:00:00.000Z';
const kinds = ['setting', 'card', 'job', 'event', 'photo', 'beside', 'aside', 'fact'];

/** The line of a record; a text is a line already. */
export const lineOf = (line) => (typeof line === 'string' ? line : JSON.stringify(line));

/** A plain file of these lines, with its seal. */
export async function sealed(...lines) {
  const body = new Blob(lines.map((line) => `${lineOf(line)}\n`));
  return new Blob([body, seal(await digestOf(body, body.size), false)]);
}

/** The kind that a line says it is of. */
const kindOf = (line) => /^\{"(\w+)":/.exec(lineOf(line))?.[1];

/** A whole backup of these records. */
export function backupOf(records, version = 3) {
  const counts = kinds.map((kind) => [
    `${kind}s`,
    records.filter((record) => kindOf(record) === kind).length,
  ]);
  const head = { format: 'tidysump-backup', version, made };
  return sealed(head, ...records, { end: Object.fromEntries(counts) });
}
