import { idsOf, t } from './catalogue.js';

// What is read aloud: units as words, ranges as one says them. The words are those of `hands`.

/** @param {string} sentence */
const plain = (sentence) => sentence.replace(/\u00a0/g, ' ');

/** @param {string} s */
const literal = (s) => s.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** The units that can be said, the longest first: "US fl oz" holds "oz". */
const units = () => idsOf('say.').sort((a, b) => b.length - a.length);

/**
 * What goes before a unit, as a count: of a fraction, "3/16 inch", there is one.
 *
 * @param {string} number
 */
const counted = (number) => (number.includes('/') ? 1 : number);

/**
 * A figure as one says it: "5–10 min" is "5 to 10 minutes".
 *
 * @param {string} figure
 */
export function saidFigure(figure) {
  const unit = units().map(literal).join('|');
  // What stands before is taken too: older browsers can't look behind.
  const amount = new RegExp(`(^|[^\\d.])(\\d[\\d.,/]*) ?(${unit})(?![\\p{L}\\d·²³])`, 'gu');
  return plain(figure)
    .replace(amount, (_, before, n, u) => `${before}${n} ${t(`say.${u}`, { count: counted(n) })}`)
    .replace(/([\p{L}\d]) ?[–…] ?(?=-?\d)/gu, (_, before) => `${before} ${t('hands.to')} `);
}

/**
 * A sentence with the units in it said: only those that cannot be a word.
 *
 * @param {string} sentence
 */
export function saidSentence(sentence) {
  const odd = units().filter((unit) => /[·°]\p{L}/u.test(unit));
  return odd.reduce((s, unit) => s.replaceAll(unit, t(`say.${unit}`)), plain(sentence));
}
