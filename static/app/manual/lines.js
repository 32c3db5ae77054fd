// The text of a page, line by line, with what was read in it marked.

/**
 * A line; `start` is the place of its first letter.
 *
 * @typedef {{ text: string, start: number }} Line
 */

/**
 * What was read, from one place of letters to another.
 *
 * @typedef {{ from: number, to: number, kind: string }} Mark
 */

/**
 * The lines of a text.
 *
 * @param {string} text
 * @returns {Line[]}
 */
export function linesOf(text) {
  let start = 0;
  return text.split('\n').map((line) => {
    const one = { text: line, start };
    start += line.length + 1;
    return one;
  });
}

/**
 * The words of a line: [{text, from, to}].
 *
 * @param {Line} line
 */
export const wordsOf = ({ text, start }) =>
  [...text.matchAll(/\S+/g)].map(({ 0: word, index }) => ({
    text: word,
    from: start + index,
    to: start + index + word.length,
  }));

/**
 * The pieces of a line: marked or not, and within them the words, each with the blanks behind it.
 *
 * @param {Line} line
 * @param {Mark[]} marks the first of several counts
 */
export function pieces({ text, start }, marks) {
  const end = start + text.length;
  const here = marks.filter(({ from, to }) => from < end && to > start);
  const borders = new Set([start, end, ...here.flatMap(({ from, to }) => [from, to])]);
  const places = [...borders].filter((p) => p >= start && p <= end).sort((a, b) => a - b);
  return places.slice(0, -1).map((from, n) => {
    const to = places[n + 1];
    const mark = here.find((one) => one.from <= from && one.to >= to);
    const parts = text.slice(from - start, to - start).match(/\S+\s*|\s+/g) ?? [];
    let at = from;
    const words = parts.map((part) => ({ text: part, from: (at += part.length) - part.length }));
    return { words, kind: mark?.kind ?? '' };
  });
}

/**
 * A line with its marks. Each word says where it stands, for who taps it.
 *
 * @param {Line} line
 * @param {Mark[]} marks
 */
export function markedLine(line, marks) {
  const p = document.createElement('p');
  p.className = 'page-line';
  for (const { words, kind } of pieces(line, marks)) {
    const piece = kind ? p.appendChild(document.createElement('mark')) : p;
    if (kind) piece.dataset.kind = kind;
    for (const { text, from } of words) {
      const word = piece.appendChild(document.createElement('span'));
      word.dataset.from = String(from);
      word.textContent = text;
    }
  }
  return p;
}
