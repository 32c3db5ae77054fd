// What looks like chance and can be had again: the same seed gives the same numbers.

/** A sequence of numbers that a seed, a whole number, decides. */
export class Chance {
  #state;

  /** @param {number} seed */
  constructor(seed) {
    this.#state = seed >>> 0;
  }

  /** A number from 0 up to, and never, 1 (mulberry32, from memory). */
  next() {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number from 0 up to, and never, `end`. */
  below(end) {
    return Math.floor(this.next() * end);
  }

  /**
   * One of a list.
   *
   * @template T
   * @param {T[]} list
   * @returns {T}
   */
  pick(list) {
    return list[this.below(list.length)];
  }
}

/** A seed that was asked for as a text, or else one by chance. */
export const seedFrom = (text) => (text ? Number(text) >>> 0 : Math.floor(Math.random() * 2 ** 32));
