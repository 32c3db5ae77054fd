import { file } from '../../site/data.js';
import { allCards } from '../../store/all-cards.js';
import { checkTexts } from './check.js';

/** All cards that are here, the samples too: [{id, text}]. */
export async function cardsHere() {
  const samples = await file('samples.json');
  const entries = await checkTexts(samples.map((card) => JSON.stringify(card)));
  const own = await allCards();
  return [...entries, ...own].map(({ bike, text }) => ({ id: bike.id, text }));
}
