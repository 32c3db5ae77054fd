import { call } from '../core/client.js';
import { newId } from '../site/new-id.js';

/** What is kept of a card: itself, its canonical text, and what a list shows of it. */
export async function draftRecord(key, card, before = { pinned: false }) {
  const { ok } = await call('cards', { cards: [card], canonical: true });
  const {
    text = '',
    place: _,
    ...bike
  } = ok?.bikes?.[0] ?? {
    id: card.id,
    name: `${card.make} ${card.model}`.trim(),
    layout: `layout.${card.layout}`,
    unfinished: true,
  };
  return { ...before, key, card, text, bike, changed: new Date().toISOString() };
}

/** The record in which the store keeps a card: of its canonical text and its line for lists. */
export const recordOf = ({ text, bike }, changed) => ({
  key: newId(),
  card: JSON.parse(text),
  text,
  bike,
  changed,
  pinned: false,
});
