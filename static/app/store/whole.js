import { close, name, use, write } from './database.js';
import { lineOf } from './log-line.js';
import { setOwn } from '../site/own.js';

/** @import { Schema } from './records.d.ts' */
/** @import { StoreNames } from 'idb' */

// The whole store, for backups: read in parts, so that no read takes longer than
// the store may, and written in parts of which each is kept whole.

const ofJob = (/** @type {string} */ id) => IDBKeyRange.bound([id, ''], [id, '\uffff']);

/**
 * What else lies in the store: the keys of all that is here, each list a Set of texts.
 *
 * @returns {Promise<{ [list: string]: Set<string> }>}
 */
export async function keysHere() {
  /** @type {StoreNames<Schema>[]} */
  const lists = ['settings', 'cards', 'jobs', 'events', 'photos'];
  /** @type {{ [list: string]: Set<string> }} */
  const keys = {};
  for (const list of lists)
    setOwn(keys, list, new Set((await use((db) => db.getAllKeys(list))).map(String)));
  return keys;
}

/** All settings: [[key, value]]. */
export const allSettings = () =>
  use(async (db) => {
    const tx = db.transaction('settings');
    const [keys, values] = await Promise.all([tx.store.getAllKeys(), tx.store.getAll()]);
    return keys.map((key, n) => [key, values[n]]);
  });

/**
 * The records of 'cards', 'jobs' or 'photos', in the order of their keys, in parts.
 *
 * @template {'cards' | 'jobs' | 'photos'} Of
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
 * The events of each of these jobs, as they lie in the store: [[event]].
 *
 * @param {string[]} ids
 */
export const eventsOf = (ids) =>
  use((db) => {
    const { store } = db.transaction('events');
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
 * @param {{ [of: string]: any[] }} records
 * @returns {StoreNames<Schema>[]}
 */
const storesOf = (records) => {
  const names = /** @type {StoreNames<Schema>[]} */ (Object.keys(records));
  return records.jobs ? [...names, 'log'] : names;
};

/**
 * Keeps all of these records, {name of the store: [record]}, or none.
 *
 * @param {{ [of: string]: any[] }} records
 */
export const putAll = (records) =>
  write(storesOf(records), (tx) => {
    for (const [of, list] of Object.entries(records))
      for (const record of list) tx.objectStore(of).put(record);
    for (const record of records.jobs ?? []) tx.objectStore('log').put(lineOf(record));
  });

/** Takes everything away, also from under other windows. */
export async function removeAll() {
  await close();
  const deleting = indexedDB.deleteDatabase(name);
  await new Promise((resolve, reject) => {
    deleting.onsuccess = resolve;
    deleting.onerror = () => reject(deleting.error);
  });
}
