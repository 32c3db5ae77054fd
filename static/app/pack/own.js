import { file } from '../data.js';
import * as store from '../store.js';
import { checkTexts } from './check.js';

/** The record in which the store keeps a card: of its canonical text and its line for lists. */
export const recordOf = ({ text, bike }, changed) => ({
  key: crypto.randomUUID(),
  card: JSON.parse(text),
  text,
  bike,
  changed,
  pinned: false,
});

/** All cards that are here, the samples too: [{id, text}]. */
export async function cardsHere() {
  const samples = await file('samples.json');
  const entries = await checkTexts(samples.map((card) => JSON.stringify(card)));
  const own = await store.cards();
  return [...entries, ...own].map(({ bike, text }) => ({ id: bike.id, text }));
}
