// How much of a file is taken in. All of it is far above what this app ever writes, and
// what is beyond is refused before it costs time or room.

/** Why a file can't be restored: its message is a word id. */
export class Fault extends Error {}

export const bounds = {
  bytes: 4 * 2 ** 30, // unpacked
  line: 1_000_000, // letters
  quoted: 16_000_000, // letters of a line that holds another text, whose letters may take two
  photo: 16_000_000, // letters of a picture's line; one of this app has about a million
  depth: 40, // brackets within brackets
  records: 2_000_000,
  unread: 16_000_000, // letters that are kept aside, in all
  aside: 50_000, // records that are
  gathered: 128_000_000, // letters of jobs whose lines don't stand together
};

const quoted = /^\{"(beside|aside|bundle)":/;
const photo = /^\{"photo":/;

/**
 * Reports whether a line holds another text.
 *
 * @param {string} line
 */
export const isQuoted = (line) => quoted.test(line);

/**
 * Refuses a line, of which this is the beginning, that is longer than one may be.
 *
 * @param {string} beginning
 * @param {number} letters that it has so far
 */
export function checkLength(beginning, letters) {
  if (letters <= bounds.line) return;
  const most = photo.test(beginning) ? bounds.photo : isQuoted(beginning) ? bounds.quoted : 0;
  if (letters > most) throw new Fault('restore.line-too-long');
}

const opening = /[[{]/g;

/**
 * Reports whether brackets stand deeper within each other than any record's. It calls
 * nothing within itself, so no depth is too much for it.
 *
 * @param {string} text JSON, or anything
 */
export function tooDeep(text) {
  opening.lastIndex = 0;
  let few = 0;
  while (few <= bounds.depth && opening.test(text)) few++;
  if (few <= bounds.depth) return false; // there are not even so many
  let depth = 0;
  for (let at = 0; at < text.length; at++) {
    const letter = text.charCodeAt(at);
    if (letter === 0x22) {
      at = endOfString(text, at);
      if (at < 0) return false; // no JSON: it can't be parsed far
    } else if (letter === 0x5b || letter === 0x7b) {
      if (++depth > bounds.depth) return true;
    } else if (letter === 0x5d || letter === 0x7d) depth--;
  }
  return false;
}

/**
 * Where the string that begins at `at` ends; -1 for nowhere.
 *
 * @param {string} text
 * @param {number} at
 */
function endOfString(text, at) {
  for (let end = text.indexOf('"', at + 1); end >= 0; end = text.indexOf('"', end + 1)) {
    let before = end - 1;
    while (text.charCodeAt(before) === 0x5c) before--;
    if ((end - before) % 2) return end;
  }
  return -1;
}
