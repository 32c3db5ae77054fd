import { besideOf } from '../store/job-events.js';
import { photosOf } from '../store/photos.js';
import { toBase64 } from './base64.js';
import { Lines, sealed } from './write.js';

/** @import { Event } from '../core/core.d.ts' */
/** @import { JobRecord } from '../store/records.d.ts' */

/** All lines of a backup that holds one job and nothing else. */
async function* linesOf(/** @type {JobRecord} */ { summary: _, ...job }, events) {
  const lines = new Lines(new Date().toISOString());
  yield lines.head;
  yield lines.of('job', job);
  for (const event of events) yield lines.of('event', { ...event, job: job.id });
  for (const other of await besideOf(job.id)) yield lines.of('beside', other);
  for (const { job: of, id, what, blob } of await photosOf(job.id))
    yield lines.of('photo', { job: of, id, what, data: await toBase64(blob) });
  yield lines.end;
}

/**
 * One job as a backup that can be read and restored: a file.
 *
 * @param {JobRecord} record
 * @param {Event[]} events
 * @param {string} name
 */
export async function jobFile(record, events, name) {
  const blob = await sealed(linesOf(record, events), false);
  return new File([blob], name, { type: blob.type });
}
