/** @import { BikeRow, LogLine } from './records.d.ts' */

// Whose a job is: of the bike that it was moved to, else of that which it was begun on, and
// where that one was joined with another, of the other. A line of the log says only on which
// it was begun.

/**
 * Gives a line of the log with the bike whose the job is.
 *
 * @param {BikeRow[]} rows what is told of the bikes
 * @returns {<Of extends Pick<LogLine, 'id' | 'bike'>>(line: Of) => Of}
 */
export function whoseOf(rows) {
  /** @type {Map<string, string>} */
  const into = new Map();
  /** @type {Map<string, string>} */
  const moved = new Map();
  for (const { id, into: root, jobs = [] } of rows) {
    if (root) into.set(id, root);
    for (const job of jobs) moved.set(job, id);
  }
  return (line) => {
    const bike = moved.get(line.id) ?? line.bike;
    return { ...line, bike: into.get(bike) ?? bike };
  };
}
