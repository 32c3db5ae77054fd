import { call } from '../core/client.js';
import { historyOf } from './history.js';
import { openJob } from './kept-job.js';
import { lineWithBike, logOf } from './of-bike.js';

/** @import { Past } from '../core/core.d.ts' */
/** @import { JobRecord } from './records.d.ts' */

/**
 * The job on the same bike that this one is compared with, as the core is told it, or
 * undefined.
 *
 * @param {JobRecord} job
 * @returns {Promise<Past | undefined>}
 */
export async function lastOf(job) {
  const { started } = job;
  const [{ bike }] = await lineWithBike(job);
  if (typeof bike !== 'string') return undefined; // a file may say anything
  const lines = await logOf(bike);
  const jobs = lines.map(({ id, summary: { finished } }) => ({ id, finished }));
  const { ok } = await call('last-job', { started, jobs });
  if (!ok?.id) return undefined;
  const { record, events, beside } = await openJob(ok.id);
  return record && historyOf(record, events, beside);
}
