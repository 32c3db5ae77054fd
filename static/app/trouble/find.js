// Finding a problem by what somebody calls it. Words count as a whole, so that "tick"
// doesn't find "stick"; only what nobody calls anything may be the beginning of a word,
// another form of it, or a slip.
import { plain } from '../words/search.js';

const least = 3; // letters of a beginning that says something
const stem = 4; // letters of a word that stays itself with an ending
const ending = 3; // letters of an ending, such as "ing"

/** @typedef {{ words: Set<string> }} Line */

/**
 * The words of a text as the search sees them.
 *
 * @param {string} text
 */
export const wordsOf = (text) =>
  plain(text)
    .replace(/['’]/g, '')
    .match(/[\p{L}\p{N}]+/gu) ?? [];

/**
 * What a problem is found by: its other names, and the words of its title that are no
 * mere links such as "and".
 *
 * @param {string} title
 * @param {string} also
 */
export const namesOf = (title, also) =>
  new Set([
    ...wordsOf(title).filter((word) => word.length >= stem),
    ...wordsOf(also).filter((word) => word.length >= least),
  ]);

/** Whether one of two words is the beginning of the other, or has another ending. */
const isForm = (typed, word) =>
  (typed.length >= least && word.startsWith(typed)) ||
  (word.length >= stem && typed.length <= word.length + ending && typed.startsWith(word));

/**
 * Whether one letter after the first is wrong, missing, too many, or has changed places with
 * the next. Another number is another thing, and no slip.
 */
export function isSlip(typed, word) {
  if (/\p{N}/u.test(typed + word)) return false;
  if (word.length >= least && typed.slice(0, -1) === word) return true; // "nuts"
  if (Math.min(typed.length, word.length) < stem || typed[0] !== word[0]) return false;
  let at = 1;
  while (at < typed.length && typed[at] === word[at]) at++;
  const [a, b] = [typed.slice(at), word.slice(at)];
  return (
    a.slice(1) === b.slice(1) ||
    a.slice(1) === b ||
    a === b.slice(1) ||
    (a[0] === b[1] && a[1] === b[0] && a.slice(2) === b.slice(2))
  );
}

/** The words that a typed one may stand for: itself alone where somebody calls a thing so. */
function meanings(typed, known) {
  if (known.has(typed)) return { typed, words: [typed] };
  const forms = [...known].filter((word) => isForm(typed, word));
  if (forms.length) return { typed, words: forms };
  return { typed, slip: true, words: [...known].filter((word) => isSlip(typed, word)) };
}

const enough = 0.6; // of what fits best
const common = 5; // what more than every fifth line has says nothing alone

/**
 * The lines that what is typed fits best; a word that few of them have counts for more.
 * Near: a word of it is spelt otherwise, or stands in none of them.
 *
 * @template {Line} L
 * @param {L[]} lines
 * @param {string} typed
 * @returns {{ fits: L[], near: boolean }}
 */
export function find(lines, typed) {
  const known = new Set(lines.flatMap(({ words }) => [...words]));
  const asked = [...new Set(wordsOf(typed))].map((word) => {
    const means = meanings(word, known);
    const on = new Set(lines.filter(({ words }) => means.words.some((w) => words.has(w))));
    return { ...means, on, weight: Math.log(1 + lines.length / on.size) };
  });
  const score = (line) =>
    asked.reduce((sum, { on, weight }) => (on.has(line) ? sum + weight : sum), 0);
  const best = Math.max(...lines.map(score));
  const fits = lines.filter((line) => best > 0 && score(line) >= enough * best);
  // A short word ("my", "the") that fits nothing says nothing.
  const told = asked.filter((word) => word.typed.length >= stem);
  const near = told.some(({ slip, on }) => slip || !fits.some((line) => on.has(line)));
  return near && best <= Math.log(1 + common) ? { fits: [], near } : { fits, near };
}
