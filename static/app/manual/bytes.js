/**
 * Where the letters of a text stand in its UTF-8 form: the core counts bytes, the page
 * letters.
 */
export class Bytes {
  /** @type {Uint32Array} the byte with which each code unit begins, and the end */
  #starts;
  #text;

  /** @param {string} text */
  constructor(text) {
    this.#text = text;
    this.#starts = new Uint32Array(text.length + 1);
    let byte = 0;
    for (let n = 0; n < text.length; n++) {
      this.#starts[n] = byte;
      byte += length(text.charCodeAt(n));
    }
    this.#starts[text.length] = byte;
  }

  /**
   * The byte with which the letter at that place begins.
   *
   * @param {number} place
   */
  of = (place) => this.#starts[Math.min(Math.max(place, 0), this.#text.length)];

  /**
   * The place of the letter that begins with that byte, or the next one that begins.
   *
   * @param {number} byte
   */
  at(byte) {
    let [low, high] = [0, this.#text.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#starts[middle] < byte) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /**
   * What stands between two bytes.
   *
   * @param {{ from: number, to: number }} quote
   */
  slice = ({ from, to }) => this.#text.slice(this.at(from), this.at(to));
}

/** Bytes of a code unit: the two of a pair are four together. */
const length = (unit) => {
  if (unit < 0x80) return 1;
  if (unit < 0x800) return 2;
  return unit >= 0xd800 && unit < 0xe000 ? 2 : 3;
};
