import { at } from './pointer.js';
import { own, setOwn } from '../site/own.js';

/** A new card of a layout: its oils and parts, and no figure yet. */
export function blankCard(layout, filter, table, id) {
  const { circuits, parts } = own(table.layouts, layout);
  const card = {
    format: 'tidysump-card',
    version: 1,
    id,
    make: '',
    model: '',
    layout,
    sources: [{ id: 'manual', title: '' }],
    circuits: structuredClone(circuits),
  };
  for (const part of parts) {
    const { word, circuit } = typeof part === 'string' ? { word: part } : part;
    const chosen = word.startsWith('edit.filter-') ? filter : word;
    if (chosen) addPart(card, table, chosen, circuit);
  }
  return card;
}

/**
 * Adds a part, with what holds it; `of` in the table names the list of what is held,
 * `apart` says that it belongs to no oil.
 */
export function addPart(card, table, word, circuit = card.circuits[0].id) {
  const { adds } = table.parts.find((part) => part.word === word);
  for (const [list, { of, apart, ...part }] of Object.entries(adds)) {
    if (!own(card, list)) setOwn(card, list, []);
    const held = of && (own(card, of) ?? []).at(-1)?.id;
    own(card, list).push({
      ...part,
      ...(part.id ? { id: freeId(card, part.id) } : {}),
      ...(apart ? {} : { circuit }),
      ...(held ? { of: held } : {}),
    });
  }
}

/**
 * Takes a part away, and the fasteners that held only it; one that drains stays. Nothing
 * is behind what is gone, and no words are of it.
 */
export function removePart(card, pointer) {
  const [, list, n] = pointer.split('/');
  const [{ id }] = own(card, list).splice(Number(n), 1);
  if (!id) return; // a note
  card.bolts = (card.bolts ?? []).filter((b) => b.of !== id || b.drains);
  for (const bolt of card.bolts) if (bolt.of === id) delete bolt.of;
  const parts = ['bolts', 'filters', 'strainers'].flatMap((name) => own(card, name) ?? []);
  const left = new Set(parts.map((part) => part.id));
  for (const part of parts) if (part.behind && !left.has(part.behind)) delete part.behind;
  const whole = ['', ...card.circuits.map((oil) => oil.id)]; // what is of the bike, or of an oil
  const stays = ({ at: place }) => [...whole, ...left].includes(place.split('/')[0]);
  const quotes = (card.quotes ?? []).map((quote) => ({ ...quote, of: quote.of.filter(stays) }));
  if (card.quotes) card.quotes = quotes.filter((quote) => quote.of.length > 0);
}

/** An id that nothing in the card has yet. */
function freeId(card, stem) {
  const lists = ['circuits', 'filters', 'strainers', 'bolts', 'sources'];
  const used = new Set(lists.flatMap((list) => (at(card, `/${list}`) ?? []).map(({ id }) => id)));
  let id = stem;
  for (let n = 2; used.has(id); n++) id = `${stem}-${n}`;
  return id;
}
