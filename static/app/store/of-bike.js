import { use } from './database.js';
import { lineOf, understood } from './log-line.js';
import { bikeRows, newest } from './store.js';
import { whoseOf } from './whose.js';

/** @import { BikeRow, JobRecord, LogLine } from './records.d.ts' */

// The jobs of a bike, and the line of one, for those that look back. The first screen needs none of it.

/**
 * The lines of the jobs on a bike, the newest first; of one that was joined with another,
 * those of both.
 *
 * @param {string} bike
 */
export async function logOf(bike) {
  const lines = await use(async (db) => {
    const tx = db.transaction(['log', 'bikes']);
    const rows = await tx.objectStore('bikes').getAll();
    const root = rows.find(({ id }) => id === bike)?.into ?? bike;
    const those = rows.filter(({ id, into }) => id === root || into === root);
    const log = tx.objectStore('log');
    const begun = new Set([root, ...those.map(({ id }) => id)]);
    const found = await Promise.all([
      ...[...begun].map((id) => log.index('bike').getAll(id)),
      ...those.flatMap(({ jobs = [] }) => jobs).map((id) => log.get(id)),
    ]);
    const all = new Map(found.flat().flatMap((line) => (line ? [[line.id, line]] : [])));
    return [...all.values()].map(whoseOf(rows)).filter((line) => line.bike === root);
  });
  return lines.map(understood).sort(newest);
}

/**
 * A job's own line, and what is told of its bike; nothing where nothing is.
 *
 * @param {JobRecord} record
 * @returns {Promise<[LogLine, BikeRow | undefined]>}
 */
export async function lineWithBike(record) {
  const rows = await bikeRows();
  const line = whoseOf(rows)(lineOf(record));
  return [line, rows.find(({ id }) => id === line.bike)];
}

/**
 * The line of the job of that id; undefined where there is none.
 *
 * @param {string} id
 */
export const lineOfJob = (id) =>
  use(async (db) => {
    const tx = db.transaction(['log', 'bikes']);
    const [line, rows] = await Promise.all([
      tx.objectStore('log').get(id),
      tx.objectStore('bikes').getAll(),
    ]);
    return line && whoseOf(rows)(understood(line));
  });
