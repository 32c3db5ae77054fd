import { limits } from './limits.js';

// Many things go to the core in several calls: one call is one wait, in which nobody else
// is answered and no progress shows, and which must end long before the deadline of a call.

const bytesOfLetter = 3; // at most
const atOnce = 350_000; // letters: about half of what a call could take before a slow phone reached its deadline

/** How many letters a call may have that can be divided, whatever they are. Ask once the limits are loaded. */
export const lettersOfCall = () => Math.min((limits.call ?? Infinity) / bytesOfLetter, atOnce);

/**
 * Divides texts, in their order, into as few runs as the letters allow; one that is too
 * long by itself goes alone.
 *
 * @param {string[]} texts
 * @param {number} letters
 * @returns {Generator<string[]>}
 */
export function* batches(texts, letters = lettersOfCall()) {
  for (let from = 0, to = 0; from < texts.length; from = to) {
    let size = 0;
    do size += texts[to++].length;
    while (to < texts.length && size + texts[to].length <= letters);
    yield texts.slice(from, to);
  }
}
