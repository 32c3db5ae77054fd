import { ofJob, use } from './database.js';

/** @import { IDBPTransaction } from 'idb' */
/** @import { Bundle, KeptEvent, Schema } from './records.d.ts' */

// The events of jobs. The first screen needs none of it.

/**
 * The events of a job: those that came in as a whole, and those added one by one.
 *
 * @param {string} id
 */
export const eventsOf = async (id) =>
  (await use((db) => eventsIn(db.transaction(['bundles', 'events']), [id])))
    .flat()
    .map(({ job: _, ...event }) => event);

/**
 * The events of each of these jobs, with their job: of one id there is one.
 *
 * @param {IDBPTransaction<Schema, any[]>} tx
 * @param {string[]} ids
 * @returns {Promise<KeptEvent[][]>}
 */
export function eventsIn(tx, ids) {
  return Promise.all(
    ids.map(async (id) => {
      /** @type {[Bundle | undefined, KeptEvent[]]} */
      const [bundle, rows] = await Promise.all([
        tx.objectStore('bundles').get(id),
        tx.objectStore('events').getAll(ofJob(id)),
      ]);
      if (!bundle) return rows;
      const all = new Map(bundle.events.map((event) => [event.id, { ...event, job: id }]));
      for (const row of rows) all.set(row.id, row);
      return [...all.values()];
    }),
  );
}

/**
 * The other contents that are known of a job, or of its events.
 *
 * @param {string} id
 */
export const besideOf = (id) => use((db) => db.getAll('beside', ofJob(id)));
