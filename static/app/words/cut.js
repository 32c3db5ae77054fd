// Text is cut here and nowhere else: between what a person sees as one character, and
// so that it says that it was cut.

const segmenter =
  globalThis.Intl?.Segmenter && new Intl.Segmenter(undefined, { granularity: 'grapheme' });

/**
 * Where a text may be cut so that it has at most that many UTF-16 units: before a whole
 * character (UAX #29), or, of one that is longer than all that may be, before a code point.
 *
 * @param {string} text
 * @param {number} most
 */
function placeIn(text, most) {
  const character = segmenter?.segment(text).containing(most)?.index || most;
  // The second half of a pair never stands alone.
  return (text.codePointAt(character - 1) ?? 0) > 0xffff ? character - 1 : character;
}

/**
 * The beginning of a text, of at most `most` letters as fields count them (UTF-16
 * units), and how many were left out.
 *
 * @param {string} text
 * @param {number} most
 */
export function cut(text, most) {
  if (text.length <= most) return { text, left: 0 };
  const end = most > 0 ? placeIn(text, most) : 0;
  return { text: text.slice(0, end), left: text.length - end };
}

/**
 * A text of at most `most` letters; one that was cut says so by what it ends in.
 *
 * @param {string} text
 * @param {number} most
 * @param {string} [mark]
 */
export function shortened(text, most, mark = '…') {
  if (text.length <= most) return text;
  return cut(text, most - mark.length).text + mark;
}
