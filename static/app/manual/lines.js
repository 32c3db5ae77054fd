import { html } from 'lit-html';

// The text of a page, line by line, with what was read in it marked.

/**
 * The lines of a text: [{text, start}], `start` being the place of its first letter.
 *
 * @param {string} text
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
 * @param {{ text: string, start: number }} line
 */
export const wordsOf = ({ text, start }) =>
  [...text.matchAll(/\S+/g)].map(({ 0: word, index }) => ({
    text: word,
    from: start + index,
    to: start + index + word.length,
  }));

/**
 * The pieces of a line: marked or not, and within them the words and what stands between.
 *
 * @param {{ text: string, start: number }} line
 * @param {{ from: number, to: number, kind: string }[]} marks places of letters; the first of several counts
 */
export function pieces({ text, start }, marks) {
  const end = start + text.length;
  const here = marks.filter(({ from, to }) => from < end && to > start);
  const borders = new Set([start, end, ...here.flatMap(({ from, to }) => [from, to])]);
  const places = [...borders].filter((p) => p >= start && p <= end).sort((a, b) => a - b);
  return places.slice(0, -1).map((from, n) => {
    const to = places[n + 1];
    const mark = here.find((one) => one.from <= from && one.to >= to);
    const parts = text.slice(from - start, to - start).match(/\S+|\s+/g) ?? [];
    let at = from;
    const words = parts.map((part) => ({ text: part, from: (at += part.length) - part.length }));
    return { words, kind: mark?.kind ?? '' };
  });
}

/**
 * A line with its marks. Each word says where it stands, for who taps it.
 *
 * @param {{ text: string, start: number }} line
 * @param {{ from: number, to: number, kind: string }[]} marks
 */
export const markedLine = (line, marks) =>
  html`<p class="page-line">
    ${pieces(line, marks).map(({ words, kind }) => {
      const drawn = words.map(({ text, from }) => html`<span data-from=${from}>${text}</span>`);
      return kind ? html`<mark data-kind=${kind}>${drawn}</mark>` : drawn;
    })}
  </p>`;
