import { plain } from '../words/search.js';
import { unparted } from './bike-list.js';

// The bikes and the cards of the first screen, where something is told of a bike: which of
// the cards are bikes, in which order they stand, and what a search looks at of each.

/** @import { BikeRow, LogLine } from '../store/records.d.ts' */

/** @type {(a: string, b: string) => number} */
const later = (a, b) => (a < b ? 1 : a > b ? -1 : 0);

/**
 * Parts the list of cards, as bikeList gives it, into the bikes and the cards to begin one
 * from. A bike is what something is told of, or what a job was done on.
 *
 * @param {BikeRow[]} rows what is told of bikes
 * @param {any[]} list
 * @param {LogLine[]} jobs the newest first
 * @returns {{ bikes: any[], cards: any[] }} of a bike {key, told, card, model, last, text}; one
 *   of which nothing is told is its row of the list
 */
export function garageList(rows, list, jobs) {
  const used = new Map();
  for (const job of jobs) if (!used.has(job.bike)) used.set(job.bike, job);
  const ofCard = new Map();
  for (const row of list) {
    const before = ofCard.get(row.bike.id);
    if (!before || (row.own && before.own && row.changed > before.changed))
      ofCard.set(row.bike.id, row);
  }
  const told = rows.filter(({ into }) => !into).map((row) => toldRow(row, ofCard, used));
  const known = new Set(
    told.flatMap(({ key, told: { aside, card = key } }) => (aside || card !== key ? [] : [key])),
  );
  const named = new Set(rows.map(({ id }) => id));
  const isBike = (row) => ofCard.get(row.bike.id) === row && used.has(row.bike.id);
  const bikes = list
    .filter((row) => isBike(row) && !named.has(row.bike.id))
    .map((row) => ({ ...row, last: used.get(row.bike.id).started }));
  const shown = new Set(bikes.map(({ key }) => key));
  // The address of a card is that of the bike that it implies: one whose own bike is no more
  // of it has another.
  const begins = (row) => (named.has(row.bike.id) ? { ...row, at: [row.key, 'card'] } : row);
  return {
    bikes: [...told, ...bikes].sort((a, b) => later(a.last, b.last) || later(b.text, a.text)),
    cards: list.filter(({ key, bike }) => !shown.has(key) && !known.has(bike.id)).map(begins),
  };
}

/**
 * @param {BikeRow} row
 * @param {Map<string, any>} ofCard
 * @param {Map<string, any>} used
 */
function toldRow(row, ofCard, used) {
  const { id, called, plate, frame, words, owner, reach, changed = '' } = row;
  const card = ofCard.get(row.card ?? id);
  const job = used.get(id);
  const model = card?.bike.name ?? job?.model ?? job?.name ?? '';
  const texts = [called, plate, unparted(plate), frame, words, owner, reach, model, card?.text];
  const last = [changed, job?.started ?? ''].sort()[1];
  const text = plain(texts.filter(Boolean).join(' '));
  return { key: id, told: row, card, model, last, mine: true, volume: card?.volume, text };
}
