import { openDB, unwrap } from 'idb';
import { lineOf } from './log-line.js';

/** @import { Database, Schema } from './records.d.ts' */
/** @import { StoreNames } from 'idb' */

// Opens IndexedDB for the store's modules (store.js, store-photos.js,
// store-whole.js), which alone use it. Writes are strict: what resolved is on the
// disk, so that the phone may die at any tap.
/** The store's name. */
export const name = 'tidysump';
const version = 4;
const deadline = 5000; // ms; some browsers never answer when storage is full
/** @type {IDBTransactionOptions} */
const strict = { durability: 'strict' };

/** @type {Promise<Database> | null} */
let opening = null;

/** Called when another window holds an old version of the store open. */
export const blocked = { report: () => {} };

function open() {
  if (opening) return opening;
  /** @type {Promise<Database>} */
  const asked = openDB(name, version, {
    async upgrade(db, from, _, tx) {
      if (from < 1) {
        db.createObjectStore('jobs', { keyPath: 'id' });
        db.createObjectStore('events', { keyPath: ['job', 'id'] });
        db.createObjectStore('settings');
      }
      if (from < 2) {
        db.createObjectStore('cards', { keyPath: 'key' });
        db.createObjectStore('lines', { keyPath: 'key' });
      }
      if (from < 4) {
        db.createObjectStore('bundles', { keyPath: 'job' });
        db.createObjectStore('beside', { keyPath: ['job', 'kind', 'id', 'text'] });
        db.createObjectStore('aside', { keyPath: 'key' });
        db.createObjectStore('saved', { keyPath: 'id' });
        db.createObjectStore('drafts', { keyPath: 'key' });
      }
      if (from >= 3) return;
      db.createObjectStore('photos', { keyPath: ['job', 'id'] });
      const log = db.createObjectStore('log', { keyPath: 'id' });
      log.createIndex('bike', 'bike');
      // What a cursor reads at a time stays small, whatever was kept before.
      for (let at = await tx.objectStore('jobs').openCursor(); at; at = await at.continue())
        log.put(lineOf(at.value));
    },
    blocked: () => blocked.report(),
    blocking(_, to, event) {
      /** @type {IDBDatabase} */ (event.target).close();
      // Another window erased everything: what this one remembers must not come back.
      if (to === null) globalThis.location?.reload();
    },
    terminated: () => {
      opening = null;
    },
  });
  opening = asked;
  asked.catch(() => (opening = null));
  return asked;
}

/**
 * Runs action(db), unless the store does not answer in time: then it is given up.
 *
 * @template T
 * @param {(db: Database) => Promise<T>} action
 * @returns {Promise<T>}
 */
function inTime(action) {
  const opened = open();
  /** @type {ReturnType<typeof setTimeout>} */
  let timer;
  let late = false;
  /** @type {Promise<never>} */
  const lateness = new Promise((_, reject) => {
    timer = setTimeout(() => {
      late = true;
      opening = null; // the next call tries anew
      reject(new Error('the store does not answer'));
    }, deadline);
  });
  const working = opened.then((db) => (late ? lateness : action(db)));
  return Promise.race([working, lateness]).finally(() => clearTimeout(timer));
}

/**
 * Runs action(db); opens the store anew and tries once more when the browser had
 * closed it unseen, as phones do in the background.
 *
 * @template T
 * @param {(db: Database) => Promise<T>} action
 * @returns {Promise<T>}
 */
export async function use(action) {
  try {
    return await inTime(action);
  } catch (error) {
    const { name: fault } = /** @type {Error} */ (error);
    if (fault !== 'InvalidStateError' && fault !== 'UnknownError') throw error;
    opening = null;
    return inTime(action);
  }
}

/**
 * Makes a change as a whole; when it rejects, nothing of it is kept or comes later.
 *
 * @param {StoreNames<Schema>[]} stores
 * @param {(tx: IDBTransaction) => void} change
 */
export async function write(stores, change) {
  /** @type {IDBTransaction | undefined} */
  let begun;
  try {
    await use((db) => {
      const tx = db.transaction(stores, 'readwrite', strict);
      tx.done.catch(() => {}); // also when it is not waited for, because change threw
      begun = unwrap(tx);
      change(begun); // plain requests: what happens to them is reported by tx.done
      return tx.done;
    });
  } catch (error) {
    abort(begun);
    throw error;
  }
}

/** @param {IDBTransaction | undefined} tx */
function abort(tx) {
  try {
    tx?.abort();
  } catch {
    // It is over already.
  }
}

/**
 * All keys [job, …] of one job, whatever follows: every list sorts after every text.
 *
 * @param {string} job
 */
export const ofJob = (job) => IDBKeyRange.bound([job], [job, []]);

/** Lets go of the store, so that it can be deleted. */
export async function close() {
  (await opening?.catch(() => undefined))?.close();
  opening = null;
}
