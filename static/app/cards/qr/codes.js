// A card as a few QR codes. Each says "TSC1:HASH:N/M:" and a part of the card's
// canonical text, deflated, in base45; the hash is of the text.
import { fromBase45, toBase45 } from './base45.js';
import { deflate, inflate } from './deflate.js';

const form = /^TSC(\d+):([0-9A-F]{8}):([1-9]\d?)\/([1-9]\d?):(.+)$/s;
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

/** The texts of a card's codes; undefined when there would be too many. */
export async function codesOf(text) {
  const all = toBase45(await deflate(text));
  const count = Math.ceil(all.length / partLetters);
  if (count > mostCodes) return undefined;
  const size = Math.ceil(all.length / count);
  const hash = hashOf(text);
  return Array.from(
    { length: count },
    (_, n) => `TSC${version}:${hash}:${n + 1}/${count}:${all.slice(n * size, (n + 1) * size)}`,
  );
}

/** Collects the codes of one card, in any order. */
export class Codes {
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

  /** Takes a code's text in; gives a word id when it is not one of this card. */
  add(code) {
    const [, made, hash, n, of, part] = form.exec(code) ?? [];
    if (!made) return 'qr.not-ours';
    if (Number(made) !== version) return 'pack.version';
    if (Number(n) > Number(of)) return 'qr.damaged';
    if (this.of && (hash !== this.hash || Number(of) !== this.of)) return 'qr.other';
    const before = this.#parts.get(Number(n));
    if (before !== undefined && before !== part) return 'qr.damaged';
    [this.hash, this.of] = [hash, Number(of)];
    this.#parts.set(Number(n), part);
    return undefined;
  }

  /** The card's text once all are there; undefined when it is damaged, or more than `most` bytes. */
  async text(most) {
    const bytes = fromBase45(this.got.map((n) => this.#parts.get(n)).join(''));
    const text = bytes && (await inflate(bytes, most).catch(() => undefined));
    return text !== undefined && hashOf(text) === this.hash ? text : undefined;
  }
}
