import { openDB, unwrap } from 'idb';
import { lineOf } from './log-line.js';

/** @import { Database, Schema } from './records.d.ts' */
/** @import { StoreNames } from 'idb' */

// Opens IndexedDB for the store's modules (store.js, store-photos.js,
// store-whole.js), which alone use it. Writes are strict: what resolved is on the
// disk, so that the phone may die at any tap.
/** The store's name. */
export const name = 'tidysump';
const version = 5;
const patience = 2000; // ms; after a crash some phones take many seconds to answer
/** @type {IDBTransactionOptions} */
const strict = { durability: 'strict' };

/** @type {Promise<Database> | null} */
let opening = null;

/**
 * How the store is: a word id that says what a person must know of it, '' while it
 * answers; and how often something was written. `see` is called when the word changes.
 */
export const standing = { word: '', writes: 0, see: () => {} };

let refusal = ''; // why it can't be had, as a word id
let blocked = false; // another window holds an old version of it open
let late = 0; // how much is asked and not answered yet

function tell() {
  const word = refusal || (blocked ? 'store.blocked' : late ? 'store.slow' : '');
  if (word === standing.word) return;
  standing.word = word;
  standing.see();
}

// What a refusal to open says. Anything else may be otherwise at the next try.
const refusals = new Map([
  ['VersionError', 'store.newer'], // a newer version of the app wrote it: it stays as it is
  ['ReferenceError', 'store.failed'],
  ['TypeError', 'store.failed'],
  ['SecurityError', 'store.failed'],
  ['NotAllowedError', 'store.failed'],
  ['InvalidStateError', 'store.failed'],
]);

/**
 * Called when the browser took the store away from under the page.
 *
 * @type {Set<() => void>}
 */
export const lost = new Set();

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
      if (from < 5) {
        db.createObjectStore('facts', { keyPath: ['book', 'of', 'id'] });
        db.createObjectStore('bikes', { keyPath: 'id' });
      }
      if (from >= 3) return;
      db.createObjectStore('photos', { keyPath: ['job', 'id'] });
      const log = db.createObjectStore('log', { keyPath: 'id' });
      log.createIndex('bike', 'bike');
      // What a cursor reads at a time stays small, whatever was kept before.
      for (let at = await tx.objectStore('jobs').openCursor(); at; at = await at.continue())
        log.put(lineOf(at.value));
    },
    blocked: () => {
      blocked = true;
      tell();
    },
    blocking(_, to, event) {
      /** @type {IDBDatabase} */ (event.target).close();
      letGo(to === null);
    },
    terminated: () => letGo(true),
  });
  opening = asked;
  asked.then(
    () => (blocked = false),
    () => (opening = null),
  );
  return asked;
}

/** @param {boolean} taken nothing may be left of it */
function letGo(taken) {
  opening = null;
  if (taken) for (const see of lost) see();
}

const longestPause = 3200; // ms between two tries

/** @returns {Promise<Database>} */
async function opened() {
  if (erased) return new Promise(() => {}); // the page is about to load again
  for (let pause = 100; ; pause *= 2)
    try {
      const db = await open();
      refusal = '';
      return db;
    } catch (error) {
      const known = refusals.get(/** @type {Error} */ (error).name);
      if (known || pause > longestPause) {
        refusal = known ?? 'store.error';
        throw error;
      }
      // While the browser clears what a site keeps, for one, nothing can be opened.
      await new Promise((resolve) => setTimeout(resolve, pause));
    }
}

/**
 * Runs action(db), however long the store takes, and tells when that is long. Opens it
 * anew and tries once more when the browser had closed it unseen, as phones do in the
 * background.
 *
 * @template T
 * @param {(db: Database) => Promise<T>} action
 * @returns {Promise<T>}
 */
export async function use(action) {
  let waits = 0;
  const timer = setTimeout(() => {
    late += waits = 1;
    tell();
  }, patience);
  try {
    try {
      return await action(await opened());
    } catch (error) {
      const { name: fault } = /** @type {Error} */ (error);
      if (refusal || (fault !== 'InvalidStateError' && fault !== 'UnknownError')) throw error;
      opening = null;
      return await action(await opened());
    }
  } finally {
    clearTimeout(timer);
    late -= waits;
    tell();
  }
}

/**
 * What is asked of the store, or undefined should that take long: for what can be shown
 * without it. Rejects as it does.
 *
 * @template T
 * @param {Promise<T>} asked
 * @returns {Promise<T | undefined>}
 */
export function ifSoon(asked) {
  /** @type {ReturnType<typeof setTimeout>} */
  let timer;
  /** @type {Promise<undefined>} */
  const long = new Promise((resolve) => {
    timer = setTimeout(resolve, standing.word === 'store.slow' ? 0 : patience);
  });
  return Promise.race([asked, long]).finally(() => clearTimeout(timer));
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
    standing.writes++;
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
 * All keys [job, …] of one job, whatever follows: every list sorts after every text. So do
 * those of facts, by their book and subject.
 *
 * @param {string[]} key
 */
export const ofJob = (...key) => IDBKeyRange.bound(key, [...key, []]);

/** Lets go of the store, so that it can be deleted. */
export async function close() {
  (await opening?.catch(() => undefined))?.close();
  opening = null;
}

let erased = false;

/** Nothing is read or written any more: everything was erased, and the page loads again. */
export const end = () => void (erased = true);
