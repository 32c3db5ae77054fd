import { ofJob, use, write } from './database.js';
import { lineOf, understood } from './log-line.js';
import { fits } from './settings-shapes.js';
import { whoseOf } from './whose.js';

/** @import { Event } from '../core/core.d.ts' */
/** @import { IDBPTransaction } from 'idb' */
/** @import { Beside, Bundle, CardRecord, JobRecord, KeptEvent, LogLine, Picture, Schema } from './records.d.ts' */

// What lists show of a job lies once more by itself, in the log: 10,000 jobs with
// their cards are too much to read.
/** @type {(a: LogLine, b: LogLine) => number} */
export const newest = (a, b) => (a.started < b.started ? 1 : a.started > b.started ? -1 : 0);

/**
 * The line of each job, the newest first: [{id, bike, name, started, summary}]; `bike` is
 * that whose the job is.
 */
export const log = async () => {
  const [lines, rows] = await use((db) => {
    const tx = db.transaction(['log', 'bikes']);
    return Promise.all([tx.objectStore('log').getAll(), tx.objectStore('bikes').getAll()]);
  });
  const whose = whoseOf(rows);
  return lines.map((line) => whose(understood(line))).sort(newest);
};

/** What is told of each bike of which anything is. */
export const bikeRows = () => use((db) => db.getAll('bikes'));

/**
 * The job of that id, or undefined.
 *
 * @param {string} id
 */
export const job = (id) => use((db) => db.get('jobs', id));

/**
 * The events of a job: those that came in as a whole, and those added one by one.
 *
 * @param {string} id
 */
export const events = async (id) =>
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

/**
 * A setting; undefined where there is none, or what is kept there is none.
 *
 * @param {string} key
 * @returns {Promise<any>}
 */
export async function setting(key) {
  const value = await use((db) => db.get('settings', key));
  return fits(key, value) ? value : undefined;
}

/**
 * Keeps a setting.
 *
 * @param {string} key
 * @param {unknown} value
 */
export const saveSetting = (key, value) =>
  write(['settings'], (tx) => tx.objectStore('settings').put(value, key));

// What lists show of a card lies once more by itself: 10,000 are too much to read.
/** @type {('cards' | 'lines')[]} */
const ofCards = ['cards', 'lines'];
const together = 500;

/** What lists show of a person's own cards: [{key, bike, changed, pinned}]. */
export const lines = () => use((db) => db.getAll('lines'));

/** All own cards, read in parts: none takes longer than the store may. */
export async function cards() {
  /** @type {CardRecord[]} */
  const all = [];
  for (;;) {
    const last = all.at(-1);
    const range = last ? IDBKeyRange.lowerBound(last.key, true) : null;
    const chunk = await use((db) => db.getAll('cards', range, together));
    all.push(...chunk);
    if (chunk.length < together) return all;
  }
}

/**
 * The own card with that key, {key, card, text, bike, changed, pinned}, or undefined.
 *
 * @param {string} key
 */
export const card = (key) => use((db) => db.get('cards', key));

/**
 * What lists show of a card.
 *
 * @param {CardRecord} record
 */
export const cardLine = ({ card: _, text: __, ...line }) => line;

/**
 * Keeps all these cards or none.
 *
 * @param {CardRecord[]} records
 */
export const putCards = (records) =>
  write(ofCards, (tx) => {
    for (const record of records) {
      tx.objectStore('lines').put(cardLine(record));
      tx.objectStore('cards').put(record);
    }
  });

/**
 * Keeps a card.
 *
 * @param {CardRecord} record
 */
export const putCard = (record) => putCards([record]);
/**
 * Takes a card away; jobs hold their own copy.
 *
 * @param {string} key
 */
export const deleteCard = (key) =>
  write(ofCards, (tx) => ofCards.forEach((name) => tx.objectStore(name).delete(key)));
