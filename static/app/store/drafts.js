import { lost, use, write } from './database.js';

// What stands in fields and is not kept as an event yet. It is written down within a
// second, and when the page is left, so that it comes back whatever happens to it.

const soon = 400; // ms; what is typed in one go is written once

/** What is known here, by key: @type {Map<string, any>} */
const contents = new Map();
/** Keys of which the store knows less than this page: @type {Set<string>} */
const behind = new Set();
/** @type {ReturnType<typeof setTimeout> | undefined} */
let timer;
/** @type {Set<() => void>} */
const listeners = new Set();

/**
 * The scope of what is typed in a job, so that it goes when its job is gone.
 *
 * @param {string} job
 * @param {string} [part] such as 'bill'
 */
export const jobScope = (job, part = '') =>
  `job/${job.replace(/[%/ ]/g, encodeURIComponent)}/${part}`;

/** Whether all that is typed in this window is written down. */
export const draftsWritten = () => behind.size === 0;

/**
 * Calls see() when that changes; returns what ends it.
 *
 * @param {() => void} see
 */
export function watchDrafts(see) {
  listeners.add(see);
  return () => listeners.delete(see);
}

/** @param {() => void} change */
function changing(change) {
  const before = draftsWritten();
  change();
  if (before !== draftsWritten()) for (const see of listeners) see();
}

/** Writes down what is typed and is not yet; rejects when the store can't take it. */
export async function flush() {
  clearTimeout(timer);
  timer = undefined;
  const keys = [...behind];
  if (!keys.length) return;
  const time = new Date().toISOString();
  const written = new Map(keys.map((key) => [key, contents.get(key)]));
  await write(['drafts'], (tx) => {
    const drafts = tx.objectStore('drafts');
    for (const [key, value] of written)
      if (value === undefined) drafts.delete(key);
      else drafts.put({ key, value, time });
    tx.commit?.(); // the page may be gone before it is asked whether there is more
  });
  // What was typed meanwhile is written by the next one.
  changing(() => {
    for (const [key, value] of written) if (contents.get(key) === value) behind.delete(key);
  });
}

/** @param {string} key */
function later(key) {
  changing(() => behind.add(key));
  timer ??= setTimeout(() => flush().catch(() => {}), soon); // what is typed next tries again
}

// What the browser took away from under the page is typed here still.
lost.add(() => contents.forEach((_, key) => later(key)));

const leaving = () => void flush().catch(() => {});
globalThis.addEventListener?.('pagehide', leaving);
globalThis.document?.addEventListener?.('visibilitychange', leaving);

/** What is typed in the fields of one scope. A value is a text, or whatever a store can hold. */
export class Drafts {
  #scope;

  /** @param {string} scope */
  constructor(scope) {
    this.#scope = scope;
  }

  /**
   * The drafts of a scope, with what was written down before this page was opened.
   * Without a store there are those of this page.
   *
   * @param {string} scope
   */
  static async open(scope) {
    const drafts = new Drafts(scope);
    const all = () => IDBKeyRange.bound(drafts.key(''), `${scope}!`, false, true); // "!" follows " "
    const kept = await use((db) => db.getAll('drafts', all())).catch(() => []);
    for (const { key, value } of kept)
      if (!contents.has(key) && !behind.has(key)) contents.set(key, value);
    return drafts;
  }

  /**
   * The key of a field's draft: Job.add takes the keys of those that an event keeps.
   *
   * @param {string} field
   */
  key(field) {
    return `${this.#scope} ${field}`;
  }

  /**
   * What stood in the field of that name, or undefined.
   *
   * @param {string} field
   */
  get(field) {
    return contents.get(this.key(field));
  }

  /**
   * All fields in which something stands: [[field, value]].
   *
   * @returns {[field: string, value: any][]}
   */
  all() {
    const start = this.key('');
    return [...contents].flatMap(([key, value]) =>
      key.startsWith(start) ? [[key.slice(start.length), value]] : [],
    );
  }

  /**
   * Notes what stands in a field. Of a list or an object that is changed in place, each
   * change is put anew.
   *
   * @param {string} field
   * @param {unknown} value
   */
  put(field, value) {
    contents.set(this.key(field), typeof value === 'object' ? structuredClone(value) : value);
    later(this.key(field));
  }

  /**
   * Forgets what stood in a field.
   *
   * @param {string} field
   */
  drop(field) {
    const key = this.key(field);
    if (contents.delete(key) || behind.has(key)) later(key);
  }
}

/**
 * What stands in the field of that name in each scope that begins so: [[scope, value]]. Of
 * their other fields, which may be long, nothing is read.
 *
 * @param {string} beginning
 * @param {string} field
 * @returns {Promise<[scope: string, value: any][]>}
 */
export async function inScopes(beginning, field) {
  const end = ` ${field}`;
  const range = () => IDBKeyRange.bound(beginning, `${beginning}\uffff`);
  const kept = await use((db) => db.getAllKeys('drafts', range()));
  const keys = new Set([...kept, ...contents.keys()]);
  const fields = [...keys].filter((key) => key.startsWith(beginning) && key.endsWith(end));
  /** @param {string} key */
  const known = (key) => contents.has(key) || behind.has(key);
  const found = fields.map(async (key) => {
    const value = known(key)
      ? contents.get(key)
      : (await use((db) => db.get('drafts', key)))?.value;
    return /** @type {[string, any]} */ ([key.slice(0, -end.length), value]);
  });
  return (await Promise.all(found)).filter(([, value]) => value !== undefined);
}

/**
 * Runs keep(), which takes these drafts out of the store with what it writes. When it
 * rejects they are as before; what was typed meanwhile stays.
 *
 * @template T
 * @param {string[]} keys
 * @param {() => Promise<T>} keep
 * @returns {Promise<T>}
 */
export async function keeping(keys, keep) {
  const before = new Map(keys.map((key) => [key, contents.get(key)]));
  changing(() => keys.forEach((key) => behind.delete(key))); // no write of them may come after
  try {
    const result = await keep();
    for (const [key, value] of before) if (contents.get(key) === value) contents.delete(key);
    return result;
  } catch (error) {
    keys.forEach(later);
    throw error;
  }
}

/** Takes away the drafts of jobs that are gone. */
export const sweepDrafts = () =>
  use(async (db) => {
    const tx = db.transaction(['drafts', 'jobs'], 'readwrite');
    const [keys, jobs] = await Promise.all([
      tx.objectStore('drafts').getAllKeys(),
      tx.objectStore('jobs').getAllKeys(),
    ]);
    const here = new Set(jobs.map((id) => jobScope(id)));
    const gone = keys.filter((key) => {
      const [scope] = key.match(/^job\/[^/]*\//) ?? [];
      return scope && !here.has(scope) && !contents.has(key);
    });
    await Promise.all(gone.map((key) => tx.objectStore('drafts').delete(key)));
    await tx.done;
    return gone;
  });
