import { file } from '../site/data.js';
import { cardOf } from './card-of.js';
import { ifSoon } from './database.js';
import { logOf } from './of-bike.js';
import * as store from './store.js';

/** @import { Card } from '../core/core.d.ts' */
/** @import { BikeRow } from './records.d.ts' */

/**
 * What an address of a bike stands for: `id` of the bike, '' for a card as such, `key` of its card where that is
 * here, the card as it is now, and what is told of the bike and of all others. `card` is
 * missing where there is no such bike.
 *
 * @typedef {{ id: string, key: string, card?: Card, row?: BikeRow, rows: BikeRow[] }} BikeAt
 */

/**
 * The bike of an address: a bike's id, or the key of a card, which implies one; with `alone`
 * a card as such, of which no bike is meant. Should the store be slow to say what is told of
 * it, `late` resolves to the same with all of that; until then the bike is only what its card
 * says.
 *
 * @param {string} id
 * @param {boolean} [alone]
 * @returns {Promise<BikeAt & { late?: Promise<BikeAt> }>}
 */
export async function bikeAt(id, alone = false) {
  const asked = store.bikeRows();
  const known = ifSoon(asked).catch(() => /** @type {BikeRow[]} */ ([])); // the frame says why
  const card = await cardOf(id);
  const rows = await known;
  if (rows || !card) return toldOf(id, card, rows ?? (await asked), alone);
  const late = asked.then((all) => toldOf(id, card, all, alone));
  late.catch(() => {}); // the frame says why
  return { id: card.id, key: id, card, rows: [], late };
}

/**
 * @param {string} id
 * @param {Card | undefined} card
 * @param {BikeRow[]} rows
 * @param {boolean} alone
 * @returns {Promise<BikeAt>}
 */
async function toldOf(id, card, rows, alone) {
  if (alone && card) return { id: '', key: id, card, rows };
  const rowOf = (/** @type {string} */ of) => rows.find((row) => row.id === of);
  const first = rowOf(card?.id ?? id);
  const row = first?.into ? (rowOf(first.into) ?? { id: first.into }) : first;
  const bike = row?.id ?? card?.id ?? id;
  const follows = row?.card ?? bike;
  if (card?.id === follows) return { id: bike, key: id, card, row, rows };
  return { id: bike, row, rows, ...(await cardNow(follows, bike)) };
}

/**
 * The card of that id as it is now: the own one that was changed last, else the sample, else
 * the one that the bike's last job had.
 *
 * @param {string} id
 * @param {string} bike
 * @returns {Promise<{ key: string, card?: Card }>}
 */
export async function cardNow(id, bike) {
  const own = (await store.lines()).filter((line) => line.bike.id === id);
  own.sort((a, b) => (a.changed < b.changed ? 1 : -1));
  const [{ key } = { key: '' }] = own;
  if (key) return { key, card: (await store.card(key))?.card };
  const samples = await file('samples.json');
  const sample = samples.find((/** @type {Card} */ card) => card.id === id);
  if (sample) return { key: id, card: sample };
  const [last] = await logOf(bike);
  return { key: '', card: last && (await store.job(last.id))?.card };
}
