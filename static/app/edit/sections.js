import { at } from './pointer.js';
import { own } from '../site/own.js';

/**
 * What a card may say, section by section in the order of a manual, asking only
 * for what the bike has: [{word, at, removable, entries}]. The table is specs/entries.json;
 * an entry of a section comes back with its whole pointer.
 */
export function sectionsOf(card, table) {
  return table.sections.flatMap(({ word, each, heading, stays, entries }) => {
    if (!each) return [{ word, entries: asked(card, '', entries) }];
    return (at(card, each) ?? []).map((part, n) => ({
      word: heading.word ?? heading.family + own(part, heading.by),
      at: `${each}/${n}`,
      removable: !stays,
      entries: asked(card, `${each}/${n}`, entries),
    }));
  });
}

const asked = (card, base, entries) =>
  entries
    .filter(({ when = {}, unless }) => {
      if (unless && !at(card, unless)?.length) return false;
      return Object.entries(when).every(([where, words]) =>
        words.includes(at(card, `${base}/${where}`)),
      );
    })
    .filter(({ kind }) => kind !== 'circuit' || card.circuits.length > 1)
    .map((entry) => ({ ...entry, at: base ? `${base}/${entry.at}` : entry.at }))
    .map((entry) => (entry.kind === 'circuit' ? { ...entry, ...circuits(card) } : entry));

/** A choice among the oils of the card. */
const circuits = (card) => ({ kind: 'choice', words: card.circuits.map(({ id }) => id) });

/** Reports whether an entry is a figure: a quantity with its standing. */
export const isFigure = ({ kind }) => !plain.includes(kind);

const plain = ['text', 'grades', 'marks', 'lines', 'number', 'choice', 'yes'];

/** Reports whether an entry is a list of words that the core reads. */
export const isWords = ({ kind }) => kind === 'grades' || kind === 'marks';

/** Reports whether the core reads what is typed at an entry. */
export const isRead = (entry) => isFigure(entry) || isWords(entry) || entry.kind === 'number';

/** What stands at an entry, as a person would type it. */
export function textOf(card, entry) {
  const value = at(card, entry.at);
  if (value === undefined || value === null) return '';
  if (isWords(entry)) return value.join(', ');
  if (entry.kind === 'lines') return value.join('\n');
  if (!isFigure(entry)) return String(value);
  if (value.value === undefined) return '';
  return `${value.value}${value.to ? `–${value.to}` : ''} ${value.unit}`;
}
