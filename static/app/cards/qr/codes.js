// A text as a few QR codes: a card's canonical text, or the backup of a bike. Each says
// "TSC1:HASH:N/M:", of a bike "TSB1:…", and a part of the text, deflated, in base45; the hash
// is of the text.
import { fromBase45, toBase45 } from './base45.js';
import { deflate, inflate } from './deflate.js';

/** What a code may be of, by the letter that says so. */
const kinds = new Map([
  ['C', 'card'],
  ['B', 'bike'],
]);
const form = /^TS([CB])(\d+):([0-9A-F]{8}):([1-9]\d?)\/([1-9]\d?):(.+)$/s;
const version = 1;
const partLetters = 500; // a code that a phone shows large enough for another's camera

/** Codes of which nobody would read more. */
export const mostCodes = 30;

/** FNV-1a, 32 bit: shows damage, and guards nothing. */
function hashOf(text) {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text))
    hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  return hash.toString(16).toUpperCase().padStart(8, '0');
}

/**
 * The texts of the codes of a text; undefined when there would be too many.
 *
 * @param {string} text
 * @param {string} [kind] what it is of: 'card' or 'bike'
 */
export async function codesOf(text, kind = 'card') {
  const [letter] = [...kinds].find(([, name]) => name === kind) ?? [];
  const all = toBase45(await deflate(text));
  const count = Math.ceil(all.length / partLetters);
  if (count > mostCodes) return undefined;
  const size = Math.ceil(all.length / count);
  const hash = hashOf(text);
  return Array.from(
    { length: count },
    (_, n) =>
      `TS${letter}${version}:${hash}:${n + 1}/${count}:${all.slice(n * size, (n + 1) * size)}`,
  );
}

/** Collects the codes of one text, in any order. */
export class Codes {
  kind = ''; // 'card' or 'bike', once one has come
  hash;
  of = 0; // how many there are; 0 before the first
  #parts = new Map();

  /** Which have come, in order. */
  get got() {
    return [...this.#parts.keys()].sort((a, b) => a - b);
  }

  get complete() {
    return this.of > 0 && this.#parts.size === this.of;
  }

  /** Takes a code's text in; gives a word id when it is not one of this text. */
  add(code) {
    const [, letter = '', made, hash, n, of, part] = form.exec(code) ?? [];
    if (!made) return 'qr.not-ours';
    if (Number(made) !== version) return 'qr.newer';
    if (Number(n) > Number(of)) return 'qr.damaged';
    const kind = kinds.get(letter) ?? '';
    if (this.of && (kind !== this.kind || hash !== this.hash || Number(of) !== this.of))
      return 'qr.other';
    const before = this.#parts.get(Number(n));
    if (before !== undefined && before !== part) return 'qr.damaged';
    [this.kind, this.hash, this.of] = [kind, hash, Number(of)];
    this.#parts.set(Number(n), part);
    return undefined;
  }

  /**
   * The text once all are there; or what is wrong, as a word id, when it is damaged or has
   * more than `most` bytes.
   *
   * @param {number} most
   * @returns {Promise<{ text: string, fault?: undefined } | { text?: undefined, fault: string }>}
   */
  async text(most) {
    const bytes = fromBase45(this.got.map((n) => this.#parts.get(n)).join(''));
    if (!bytes) return { fault: 'qr.damaged' };
    try {
      const text = await inflate(bytes, most);
      return hashOf(text) === this.hash ? { text } : { fault: 'qr.damaged' };
    } catch (error) {
      return { fault: error instanceof RangeError ? 'qr.too-large' : 'qr.damaged' };
    }
  }
}
