import { openDB, unwrap } from 'idb';

// The one owner of IndexedDB. Writes are strict: what resolved is on the disk,
// so that the phone may die at any tap.
const name = 'tidysump';
const version = 2;
const deadline = 5000; // ms; some browsers never answer when storage is full
const strict = { durability: 'strict' };

let opening = null;

/** Told when another window holds an old version of the store open. */
export const blocked = { tell: () => {} };

function open() {
  opening ??= openDB(name, version, {
    upgrade(db, from) {
      if (from < 1) {
        db.createObjectStore('jobs', { keyPath: 'id' });
        db.createObjectStore('events', { keyPath: ['job', 'id'] });
        db.createObjectStore('settings');
      }
      db.createObjectStore('cards', { keyPath: 'key' });
      db.createObjectStore('lines', { keyPath: 'key' });
    },
    blocked: () => blocked.tell(),
    blocking: (_, __, event) => event.target.close(),
    terminated: () => (opening = null),
  });
  opening.catch(() => (opening = null));
  return opening;
}

/** Runs work(db), unless the store does not answer in time: then it is given up. */
function inTime(work) {
  const opened = open();
  let timer;
  let late = false;
  const lateness = new Promise((_, reject) => {
    timer = setTimeout(() => {
      late = true;
      opening = null; // the next call tries anew
      reject(new Error('the store does not answer'));
    }, deadline);
  });
  const working = opened.then((db) => (late ? lateness : work(db)));
  return Promise.race([working, lateness]).finally(() => clearTimeout(timer));
}

/**
 * Runs work(db); opens the store anew and tries once more when the browser had
 * closed it behind our back, as phones do in the background.
 */
async function use(work) {
  try {
    return await inTime(work);
  } catch (error) {
    if (error.name !== 'InvalidStateError' && error.name !== 'UnknownError') throw error;
    opening = null;
    return inTime(work);
  }
}

/** Makes a change as a whole; when it rejects, nothing of it is kept or comes later. */
async function write(stores, change) {
  let tx;
  try {
    await use((db) => {
      tx = db.transaction(stores, 'readwrite', strict);
      tx.done.catch(() => {}); // also when it is not waited for, because change threw
      change(unwrap(tx)); // plain requests: what happens to them is told by tx.done
      return tx.done;
    });
  } catch (error) {
    abort(tx);
    throw error;
  }
}

function abort(tx) {
  try {
    tx?.abort();
  } catch {
    // It is over already.
  }
}

/** All jobs, the newest first. */
export const jobs = async () =>
  (await use((db) => db.getAll('jobs'))).sort((a, b) => (a.started < b.started ? 1 : -1));

/** The job of that id, or undefined. */
export const job = (id) => use((db) => db.get('jobs', id));

/** The events of a job. */
export const events = async (id) => {
  const range = IDBKeyRange.bound([id, ''], [id, '\uffff']);
  return (await use((db) => db.getAll('events', range))).map(({ job: _, ...event }) => event);
};

/** Writes a job down. */
export const putJob = (record) => write(['jobs'], (tx) => tx.objectStore('jobs').put(record));

/** Adds an event to a job, together with the job's new summary. */
export const addEvent = (record, event) =>
  write(['jobs', 'events'], (tx) => {
    tx.objectStore('events').add({ ...event, job: record.id });
    tx.objectStore('jobs').put(record);
  });

/** A setting, or undefined. */
export const setting = (key) => use((db) => db.get('settings', key));

/** Keeps a setting. */
export const keepSetting = (key, value) =>
  write(['settings'], (tx) => tx.objectStore('settings').put(value, key));

// What lists show of a card lies once more by itself: 10,000 are too much to read.
const ofCards = ['cards', 'lines'];
const together = 500;

/** What lists show of a person's own cards: [{key, bike, changed, pinned}]. */
export const lines = () => use((db) => db.getAll('lines'));

/** All own cards, read in parts: none takes longer than the store may. */
export async function cards() {
  const all = [];
  for (let part = []; ;) {
    const range = part.length ? IDBKeyRange.lowerBound(part.at(-1).key, true) : null;
    part = await use((db) => db.getAll('cards', range, together));
    all.push(...part);
    if (part.length < together) return all;
  }
}

/** The own card with that key, {key, card, text, bike, changed, pinned}, or undefined. */
export const card = (key) => use((db) => db.get('cards', key));

/** Keeps all these cards or none. */
export const putCards = (records) =>
  write(ofCards, (tx) => {
    for (const { card: _, text: __, ...line } of records) tx.objectStore('lines').put(line);
    for (const record of records) tx.objectStore('cards').put(record);
  });

/** Keeps a card. */
export const putCard = (record) => putCards([record]);
/** Takes a card away; jobs hold their own copy. */
export const deleteCard = (key) =>
  write(ofCards, (tx) => ofCards.forEach((name) => tx.objectStore(name).delete(key)));
