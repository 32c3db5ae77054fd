import { nothing } from 'lit-html';
import { plate } from '../plan/plate.js';
import { aspectOf, noteOf, thingOf, valueOf } from './what.js';

// What was found, in the shape of a plan's plate: a cell for each thing, its main figure
// large, each with the words of the page that say so.

/** Of several figures of a thing the one that is looked for. */
const main = [
  'torque',
  'turn',
  'grades',
  'device',
  'distance',
  'first',
  'severe',
  'target',
  'kind',
];

/** Aspects that are words, and no figures. */
const inWords = ['device', 'state', 'stance', 'drive', 'seal', 'kind', 'every', 'marks', 'service'];

const usual = ['distance', 'months', 'hours'];

/** The cell that a reading stands in, by the word of its name. */
function cellOf(what) {
  const [thing, aspect] = [thingOf(what), aspectOf(what)];
  if (!thing) return 'manual.cell.bike';
  if (thing === 'interval') {
    const [stem] = aspect.split('-');
    return `manual.cell.interval.${usual.includes(stem) ? 'usual' : stem}`;
  }
  if (!thing.startsWith('oil.')) return `manual.of.${thing}`;
  return ['grades', 'marks', 'service'].includes(aspect)
    ? `manual.cell.${thing}`
    : `manual.cell.${what}`;
}

/**
 * The cells of readings: [{name, first, others}], the most looked for first.
 *
 * @param {any[]} readings
 */
export function cells(readings) {
  const all = new Map();
  for (const reading of readings) {
    const name = cellOf(reading.what);
    all.set(name, [...(all.get(name) ?? []), reading]);
  }
  const rank = ({ what }) =>
    main.includes(aspectOf(what)) ? main.indexOf(aspectOf(what)) : main.length;
  return [...all].map(([name, list]) => {
    const [first, ...others] = [...list].sort((a, b) => rank(a) - rank(b));
    return { name, first, others };
  });
}

/** What stands beside the main figure of a cell, each once, though several pages say it. */
function besideOf(first, others) {
  const notes = new Set(others.map(noteOf));
  notes.delete(noteOf(first));
  return notes.size ? [[...notes].join(' · ')] : [];
}

/**
 * The plate of what was found. `quote` draws the words that a list of readings comes from.
 *
 * @param {any[]} readings
 * @param {(readings: any[]) => unknown} quote
 */
export function found(readings, quote) {
  if (!readings.length) return nothing;
  /** @type {any[]} */
  const figures = cells(readings).map(({ name, first, others }) => ({
    name,
    texts: [valueOf(first)],
    beside: [...besideOf(first, others)],
    words: inWords.includes(aspectOf(first.what)) || name === 'manual.cell.bike',
    of: first.what,
    readings: [first, ...others],
  }));
  return plate(figures, ({ readings: list }) => quote(list));
}
