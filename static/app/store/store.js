import { use, write } from './database.js';
import { understood } from './log-line.js';
import { fits } from './settings-shapes.js';
import { whoseOf } from './whose.js';

/** @import { CardRecord, LogLine } from './records.d.ts' */

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

/** What lists show of a person's own cards: [{key, bike, changed, pinned}]. */
export const lines = () => use((db) => db.getAll('lines'));

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
