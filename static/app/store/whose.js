import { bikeName } from './bike-name.js';

/** @import { BikeRow, LogLine } from './records.d.ts' */

// Whose a job is: of the bike that it was moved to, else of that which it was begun on, and
// where that one was joined with another, of the other. A line of the log says only on which
// it was begun.

/**
 * Gives a line of the log with the bike whose the job is, and with what that is called.
 *
 * @param {BikeRow[]} rows what is told of the bikes
 * @returns {(line: LogLine) => LogLine}
 */
export function whoseOf(rows) {
  /** @type {Map<string, string>} */
  const into = new Map();
  /** @type {Map<string, string>} */
  const moved = new Map();
  /** @type {Map<string, BikeRow>} */
  const told = new Map();
  for (const row of rows) {
    const { id, into: root, jobs = [] } = row;
    told.set(id, row);
    if (root) into.set(id, root);
    for (const job of jobs) moved.set(job, id);
  }
  return (line) => {
    const on = moved.get(line.id) ?? line.bike;
    const bike = into.get(on) ?? on;
    return { ...line, bike, name: bikeName(told.get(bike), line.name), model: line.name };
  };
}
