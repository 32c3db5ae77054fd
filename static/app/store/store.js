import { use, write } from './database.js';
import { lineOf, understood } from './log-line.js';

export { blocked } from './database.js';

// What lists show of a job lies once more by itself, in the log: 10,000 jobs with
// their cards are too much to read.
const newest = (a, b) => (a.started < b.started ? 1 : a.started > b.started ? -1 : 0);

/** The line of each job, the newest first: [{id, bike, name, started, summary}]. */
export const log = async () => (await use((db) => db.getAll('log'))).map(understood).sort(newest);

/** The lines of the jobs on a bike, the newest first. */
export const logOf = async (bike) =>
  (await use((db) => db.getAllFromIndex('log', 'bike', bike))).map(understood).sort(newest);

/** The job of that id, or undefined. */
export const job = (id) => use((db) => db.get('jobs', id));

/** The events of a job. */
export const events = async (id) => {
  const range = IDBKeyRange.bound([id, ''], [id, '\uffff']);
  return (await use((db) => db.getAll('events', range))).map(({ job: _, ...event }) => event);
};

/** Writes a job down. */
export const putJob = (record) =>
  write(['jobs', 'log'], (tx) => {
    tx.objectStore('jobs').put(record);
    tx.objectStore('log').put(lineOf(record));
  });

/** Adds an event to a job, together with the job's new summary and the event's picture, if any. */
export const addEvent = (record, event, photo) =>
  write(['jobs', 'log', 'events', ...(photo ? ['photos'] : [])], (tx) => {
    tx.objectStore('events').add({ ...event, job: record.id });
    tx.objectStore('jobs').put(record);
    tx.objectStore('log').put(lineOf(record));
    if (photo) tx.objectStore('photos').add({ ...photo, job: record.id, id: event.id });
  });

/** A setting, or undefined. */
export const setting = (key) => use((db) => db.get('settings', key));

/** Keeps a setting. */
export const saveSetting = (key, value) =>
  write(['settings'], (tx) => tx.objectStore('settings').put(value, key));

// What lists show of a card lies once more by itself: 10,000 are too much to read.
const ofCards = ['cards', 'lines'];
const together = 500;

/** What lists show of a person's own cards: [{key, bike, changed, pinned}]. */
export const lines = () => use((db) => db.getAll('lines'));

/** All own cards, read in parts: none takes longer than the store may. */
export async function cards() {
  const all = [];
  for (let chunk = []; ;) {
    const range = chunk.length ? IDBKeyRange.lowerBound(chunk.at(-1).key, true) : null;
    chunk = await use((db) => db.getAll('cards', range, together));
    all.push(...chunk);
    if (chunk.length < together) return all;
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
