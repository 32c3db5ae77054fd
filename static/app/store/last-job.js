import { call } from '../core/client.js';
import * as store from './store.js';

/** @import { Past } from '../core/core.d.ts' */
/** @import { JobRecord } from './records.d.ts' */

/**
 * The job on the same bike that this one is compared with: {card, bench, events}, or undefined.
 *
 * @param {JobRecord} record
 * @returns {Promise<Past | undefined>}
 */
export async function lastOf({ card: { id }, started }) {
  const lines = await store.logOf(id);
  const jobs = lines.map(({ id: job, summary: { finished } }) => ({ id: job, finished }));
  const { ok } = await call('last-job', { started, jobs });
  if (!ok?.id) return undefined;
  const last = await store.job(ok.id);
  if (!last) return undefined;
  const { card, bench } = last;
  return { card, bench, events: await store.events(ok.id) };
}
