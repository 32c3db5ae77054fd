import { close, end, name, ofJob, use, write } from './database.js';
import { outdated } from './facts.js';
import { lineOf } from './log-line.js';
import { eventsIn } from './job-events.js';
import { cardLine } from './store.js';
import { announceErasing } from './windows.js';
import { newId } from '../site/new-id.js';

/** @import { Saved, Schema } from './records.d.ts' */
/** @import { StoreNames } from 'idb' */

// The whole store, for backups: read in parts, so that no read takes longer than
// the store may, and written in parts of which each is kept whole.

/**
 * The keys of one of the store's lists.
 *
 * @param {'settings' | 'cards' | 'jobs'} of
 * @returns {Promise<Set<string>>}
 */
export const keysOf = async (of) => new Set(await use((db) => db.getAllKeys(of)));

/** The ids of all jobs of which anything is here. */
export async function jobsHere() {
  /** @type {Set<string>} */
  const ids = new Set();
  for (const of of /** @type {const} */ (['jobs', 'bundles']))
    for (const id of await use((db) => db.getAllKeys(of))) ids.add(id);
  const together = 10_000; // keys read at once
  /** @type {IDBKeyRange | null} */
  let range = null;
  for (;;) {
    /** @type {IDBKeyRange | null} */
    const from = range;
    const keys = await use((db) => db.getAllKeys('events', from, together));
    for (const [job] of keys) ids.add(job);
    if (keys.length < together) return ids;
    range = IDBKeyRange.lowerBound(keys.at(-1), true);
  }
}

/** All settings but the mark of an erasing: [[key, value]]. */
export const allSettings = () =>
  use(async (db) => {
    const tx = db.transaction('settings');
    const [keys, values] = await Promise.all([tx.store.getAllKeys(), tx.store.getAll()]);
    return keys.map((key, n) => [key, values[n]]).filter(([key]) => key !== 'erased');
  });

/**
 * The records of one of the store's lists, in the order of their keys, in parts.
 *
 * @template {'cards' | 'jobs' | 'photos' | 'bundles' | 'beside' | 'aside' | 'facts'} Of
 * @param {Of} of
 * @param {number} together how many a part has at most
 */
export async function* chunks(of, together) {
  /** @type {any} */
  let last;
  for (;;) {
    /** @type {IDBKeyRange | null} */
    const range = last === undefined ? null : IDBKeyRange.lowerBound(last, true);
    /** @type {[Schema[Of]['value'][], any[]]} */
    const [records, keys] = await use((db) => {
      const { store } = db.transaction(of);
      return Promise.all([store.getAll(range, together), store.getAllKeys(range, together)]);
    });
    if (records.length) yield records;
    if (records.length < together) return;
    last = keys.at(-1);
  }
}

/**
 * The events of each of these jobs, with their job: [[event]].
 *
 * @param {string[]} ids
 */
export const eventsOf = (ids) => use((db) => eventsIn(db.transaction(['bundles', 'events']), ids));

/**
 * The other contents that are known of each of these jobs: [[{job, kind, id, text}]].
 *
 * @param {string[]} ids
 */
export const besideOf = (ids) =>
  use((db) => {
    const { store } = db.transaction('beside');
    return Promise.all(ids.map((id) => store.getAll(ofJob(id))));
  });

/**
 * The records with these keys; undefined for those that are not here.
 *
 * @template {StoreNames<Schema>} Of
 * @param {Of} of
 * @param {any[]} keys
 */
export const recordsOf = (of, keys) =>
  use((db) => {
    const { store } = db.transaction(of);
    return Promise.all(keys.map((key) => store.get(key)));
  });

/**
 * What may be put into the store together. What lists show of jobs and cards follows
 * from these and is written with them.
 *
 * @typedef {{ [Of in 'jobs' | 'bundles' | 'events' | 'beside' | 'aside' | 'photos' | 'cards' | 'saved' | 'facts']?: Schema[Of]['value'][] }} Records
 */

/** @type {(records: Records) => StoreNames<Schema>[]} */
const storesOf = (records) => [
  .../** @type {StoreNames<Schema>[]} */ (Object.keys(records)),
  ...(records.jobs ? /** @type {const} */ (['log']) : []),
  ...(records.cards ? /** @type {const} */ (['lines']) : []),
  ...(records.facts ? /** @type {const} */ (['bikes']) : []),
];

/**
 * Keeps all of these records, {name of the store: [record]}, or none.
 *
 * @param {Records} records
 */
export async function putAll(records) {
  if (!Object.keys(records).length) return;
  await write(storesOf(records), (tx) => {
    for (const [of, list] of Object.entries(records))
      for (const record of list) tx.objectStore(of).put(record);
    for (const record of records.jobs ?? []) tx.objectStore('log').put(lineOf(record));
    for (const record of records.cards ?? []) tx.objectStore('lines').put(cardLine(record));
    outdated(tx, records.facts ?? []);
  });
}

/** What came in and can't be read. */
export const aside = () => use((db) => db.getAll('aside'));

/**
 * Takes away what lay aside.
 *
 * @param {string[]} keys
 */
export const dropAside = (keys) =>
  write(['aside'], (tx) => {
    for (const key of keys) tx.objectStore('aside').delete(key);
  });

/** How many events of each job were in a file that this phone handed out: Map of id -> number. */
export const saved = async () =>
  new Map((await use((db) => db.getAll('saved'))).map(({ id, events }) => [id, events]));

/**
 * Notes that these jobs were in a file that was handed out.
 *
 * @param {Saved[]} list
 */
export const putSaved = (list) => putAll({ saved: list });

/**
 * Takes everything away, also from under other windows, which load again. A mark stays,
 * so that a window that slept meanwhile doesn't take it for the browser's doing and put
 * back what it holds.
 */
export async function removeAll() {
  await clearAll().catch(deleteAll); // it may be broken, or another version's
  announceErasing();
}

/** Erases everything; this page, which remembers some of it, has to load again. */
export const eraseAll = () => removeAll().then(end);

async function clearAll() {
  const names = await use(async (db) => [...db.objectStoreNames]);
  await write(names, (tx) => {
    for (const of of names) tx.objectStore(of).clear();
    tx.objectStore('settings').put(newId(), 'erased');
  });
}

async function deleteAll() {
  announceErasing(); // before the others see it go
  await close();
  const deleting = indexedDB.deleteDatabase(name);
  await new Promise((resolve, reject) => {
    deleting.onsuccess = resolve;
    deleting.onerror = () => reject(deleting.error);
  });
}
