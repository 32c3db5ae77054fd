import { file } from '../site/data.js';
import { ifSoon } from './database.js';
import * as store from './store.js';

/** @import { Card } from '../core/core.d.ts' */

/**
 * The card of that key: an own one, else the sample of that id; or undefined.
 *
 * @param {string} key
 * @returns {Promise<Card | undefined>}
 */
export async function cardOf(key) {
  const asked = store.card(key).catch(() => undefined); // samples need no store
  const samples = file('samples.json');
  const sample = async () => (await samples).find((/** @type {Card} */ card) => card.id === key);
  return (await ifSoon(asked))?.card ?? (await sample()) ?? (await asked)?.card;
}
