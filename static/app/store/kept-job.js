import { ofJob, use, write } from './database.js';
import { lineOf } from './log-line.js';
import { eventsIn } from './job-events.js';

/** @import { Event } from '../core/core.d.ts' */
/** @import { Beside, JobRecord } from './records.d.ts' */

// A job as a whole, for those that open it. The first screen needs none of it.

/**
 * All that is kept of a job but its pictures; `erasure` names the last time that
 * everything was erased on purpose.
 *
 * @param {string} id
 */
export const openJob = (id) =>
  use(async (db) => {
    const tx = db.transaction(['jobs', 'bundles', 'events', 'beside', 'settings']);
    const [record, [events = []], beside, erasure] = await Promise.all([
      tx.objectStore('jobs').get(id),
      eventsIn(tx, [id]),
      tx.objectStore('beside').getAll(ofJob(id)),
      tx.objectStore('settings').get('erased'),
    ]);
    return { record, events: events.map(({ job: _, ...event }) => event), beside, erasure };
  });

/**
 * Notes the steps that a job began with, unless they are noted.
 *
 * @param {string} id
 * @param {string[]} steps
 */
export const putSteps = (id, steps) =>
  write(['jobs', 'log'], (tx) => {
    const jobs = tx.objectStore('jobs');
    const asked = jobs.get(id);
    asked.onsuccess = () => {
      if (!asked.result || asked.result.steps) return;
      const record = { ...asked.result, steps };
      jobs.put(record);
      tx.objectStore('log').put(lineOf(record));
    };
  });

/**
 * Writes down again what is gone from the store and a page still holds.
 *
 * @param {JobRecord} record
 * @param {(Event & { id: string })[]} events
 * @param {Beside[]} beside
 */
export const putBack = (record, events, beside) =>
  write(['jobs', 'log', 'events', 'beside'], (tx) => {
    tx.objectStore('jobs').put(record);
    tx.objectStore('log').put(lineOf(record));
    for (const event of events) tx.objectStore('events').put({ ...event, job: record.id });
    for (const other of beside) tx.objectStore('beside').put(other);
  });
