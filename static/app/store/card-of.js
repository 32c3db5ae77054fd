import { file } from '../site/data.js';
import * as store from './store.js';

/** @import { Card } from '../core/core.d.ts' */

/**
 * The card of that key: an own one, else the sample of that id; or undefined.
 *
 * @param {string} key
 * @returns {Promise<Card | undefined>}
 */
export async function cardOf(key) {
  const own = await store.card(key).catch(() => undefined); // samples need no store
  return (
    own?.card ?? (await file('samples.json')).find((/** @type {Card} */ card) => card.id === key)
  );
}
