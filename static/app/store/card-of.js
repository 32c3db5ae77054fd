import { file } from '../site/data.js';
import * as store from './store.js';

/** The card of that key: an own one, else the sample of that id; or undefined. */
export async function cardOf(key) {
  const own = await store.card(key).catch(() => undefined); // samples need no store
  return own?.card ?? (await file('samples.json')).find((card) => card.id === key);
}
