// When to remind of a backup: so many jobs or days are common practice, no source.
const manyJobs = 3;
const longTime = 30 * 86_400_000; // ms

const finishOf = ({ summary }) => summary.finished ?? '';

/** The finished jobs that no backup holds: those finished after the last one, {time}. */
export const unsaved = (jobs, backup) => jobs.filter((job) => finishOf(job) > (backup?.time ?? ''));

/**
 * Reports whether to remind at the time `now` (ms): much is in no backup. Put off
 * at `later`, {time}, it comes back with as many jobs more, or as much later.
 */
export function remind(jobs, backup, later, now) {
  const open = unsaved(jobs, backup);
  if (!open.length) return false;
  const putOff = later?.time > (backup?.time ?? '') ? later.time : undefined;
  const fresh = open.filter((job) => finishOf(job) > (putOff ?? ''));
  const oldest = open.map(finishOf).sort()[0];
  const since = putOff ?? backup?.time ?? oldest;
  return fresh.length >= manyJobs || now - Date.parse(since) >= longTime;
}
