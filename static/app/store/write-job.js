import { write } from './database.js';
import { lineOf } from './log-line.js';

/** @import { Event } from '../core/core.d.ts' */
/** @import { JobRecord, Picture } from './records.d.ts' */

// Writing jobs down. The first screen needs none of it.

/**
 * Writes a job down.
 *
 * @param {JobRecord} record
 */
export const putJob = (record) =>
  write(['jobs', 'log'], (tx) => {
    tx.objectStore('jobs').put(record);
    tx.objectStore('log').put(lineOf(record));
  });

/**
 * Adds an event to a job, together with the job's new summary and the event's picture, if
 * any; the drafts of these keys are no longer needed then.
 *
 * @param {JobRecord} record
 * @param {Event & { id: string }} event
 * @param {Pick<Picture, 'what' | 'blob' | 'bytes'>} [photo]
 * @param {string[]} [drafts]
 */
export const addEvent = (record, event, photo, drafts = []) =>
  write(['jobs', 'log', 'events', 'photos', 'drafts'], (tx) => {
    tx.objectStore('events').add({ ...event, job: record.id });
    tx.objectStore('jobs').put(record);
    tx.objectStore('log').put(lineOf(record));
    if (photo) tx.objectStore('photos').add({ ...photo, job: record.id, id: event.id });
    for (const key of drafts) tx.objectStore('drafts').delete(key);
  });

/**
 * Adds events to a job in one go, which what these drafts hold is in.
 *
 * @param {JobRecord} record
 * @param {(Event & { id: string })[]} events
 * @param {string[]} drafts
 */
export const addEvents = (record, events, drafts) =>
  write(['jobs', 'log', 'events', 'drafts'], (tx) => {
    for (const event of events) tx.objectStore('events').add({ ...event, job: record.id });
    tx.objectStore('jobs').put(record);
    tx.objectStore('log').put(lineOf(record));
    for (const key of drafts) tx.objectStore('drafts').delete(key);
  });
