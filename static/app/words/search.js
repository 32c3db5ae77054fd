// Searching a list for what is typed. The text of each line is prepared beforehand, so
// that 10,000 are looked through between two keystrokes.

/**
 * A text as a search sees it: without accents and capitals, its digits ASCII ones.
 *
 * @param {string} text
 */
export const plain = (text) =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/(?!\d)\p{Nd}/gu, digit)
    .toLowerCase();

/**
 * Which digit of its script a sign is: wherever there are any, they are ten in a row.
 *
 * @param {string} sign
 */
function digit(sign) {
  let n = 0;
  while (/\p{Nd}/u.test(String.fromCodePoint(Number(sign.codePointAt(0)) - n - 1))) n++;
  return String(n % 10);
}

/**
 * Those in which every word that is typed stands, in whole or in part.
 *
 * @template {{ text: string }} Line
 * @param {Line[]} list
 * @param {string} typed
 * @returns {Line[]}
 */
export function search(list, typed) {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  words.sort((a, b) => b.length - a.length); // the longest leaves the fewest for the others
  return words.reduce((fits, word) => fits.filter(({ text }) => text.includes(word)), list);
}
