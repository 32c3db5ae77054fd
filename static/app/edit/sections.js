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
        words.includes(at(card, where.startsWith('/') ? where : `${base}/${where}`)),
      );
    })
    .map((entry) => ({ ...entry, at: base ? `${base}/${entry.at}` : entry.at }))
    .map((entry) => {
      if (entry.kind === 'circuit') return among(entry, circuits(card));
      return entry.kind === 'part' ? among(entry, partsBut(card, base, at(card, entry.at))) : entry;
    })
    .filter(({ kind, names }) => kind !== 'choice' || !names || names.size > 0);

/** A choice among things of the card, which are told by names and not by their ids. */
const among = (entry, names) => ({ ...entry, kind: 'choice', words: [...names.keys()], names });

/** The oils of a card, of which there is a choice where it has several: id -> names. */
const circuits = ({ circuits: oils }) =>
  new Map(oils.length > 1 ? oils.map(({ id, role }) => [id, [`role.${role}`]]) : []);

/**
 * What may be in front of a part: id -> its name, and where it is. A filter that is screwed
 * on is its own fastener, and comes once; so does one that may be.
 */
function partsBut(card, base, chosen) {
  const list = ['filters', 'strainers', 'bolts'].flatMap((name) =>
    (own(card, name) ?? []).map((part, n) => ({ name, part, at: `/${name}/${n}` })),
  );
  const may = list.filter(
    ({ part, at: place }) =>
      part.id === chosen ||
      (place !== base &&
        !['spin-on', 'unknown'].includes(part.kind) &&
        part.purpose !== 'leave-alone'),
  );
  return new Map(may.map(({ name, part }) => [part.id, [wordOf(name, part), part.place]]));
}

const wordOf = (list, { kind, purpose }) => {
  if (list === 'strainers') return 'part.strainer';
  return list === 'filters' ? `edit.filter-${kind}` : `purpose.${purpose}`;
};

/** Reports whether an entry is a figure: a quantity with its standing. */
export const isFigure = ({ kind }) => !plain.includes(kind);

/** What the core reads as words of a label; of the last two a card has one text. */
const labels = ['grades', 'marks', 'grade', 'service'];

const plain = ['text', 'remark', ...labels, 'lines', 'number', 'choice', 'yes'];

/** Reports whether an entry is a list of words that the core reads. */
export const isWords = ({ kind }) => kind === 'grades' || kind === 'marks';

/** Reports whether the core reads what is typed at an entry. */
export const isRead = (entry) =>
  isFigure(entry) || labels.includes(entry.kind) || entry.kind === 'number';

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
