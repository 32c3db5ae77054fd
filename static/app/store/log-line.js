/** @import { Phase } from '../core/core.d.ts' */
/** @import { JobRecord, LogLine } from './records.d.ts' */

/**
 * The line of a job's record in the log.
 *
 * @param {JobRecord} record
 * @returns {LogLine}
 */
export const lineOf = ({ id, bike, card, name, started, summary = {}, steps }) => ({
  id,
  bike: bike ?? card?.id ?? '',
  name,
  started,
  summary,
  planned: Boolean(steps),
});

// What earlier versions kept of a job said the same in other words, and of a job that
// was only just begun nothing is kept yet.
/** @type {(old: any) => Phase} */
const phaseOf = ({ finished, waiting }) => (!finished ? 'open' : waiting ? 'waiting' : 'closed');
const phases = new Set(['open', 'waiting', 'closed']);
const watched = /^debris\.(watch|stop)$/;

/**
 * A line with its summary as a replay answers it today, whichever version wrote it.
 *
 * @param {LogLine} line
 * @returns {LogLine}
 */
export function understood(line) {
  const summary = line.summary ?? {}; // a file may say anything
  if (phases.has(summary.phase ?? '')) return line;
  const phase = phaseOf(summary);
  return { ...line, summary: { ...summary, phase, watch: watched.test(summary.verdict ?? '') } };
}
