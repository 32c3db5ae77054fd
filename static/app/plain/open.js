import { Job } from '../store/job.js';
import { plainReading } from './plain.js';

/** @import { Plan, State } from '../core/core.d.ts' */
/** @typedef {Job & { plan: Plan, state: State }} WorkedOut a job that the core has worked out */

/**
 * Opens a job for a screen. `job` is there when the core has worked it out; else `plain`
 * is the part of a screen that draws what there is to read, or says that there is no such
 * job.
 *
 * @param {string} id
 * @param {any} app
 * @returns {Promise<{ job?: WorkedOut, plain?: Awaited<ReturnType<typeof plainReading>> }>}
 */
export async function openJob(id, app) {
  let none = false;
  const job = await app.attempt(async () => {
    const found = await Job.open(id);
    none = !found;
    return found;
  });
  if (job?.plan && job.state) return { job: /** @type {WorkedOut} */ (job) };
  return { plain: await plainReading(job, none, app) };
}
