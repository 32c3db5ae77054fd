import { checkTexts } from '../cards/pack/check.js';
import * as whole from '../store/whole.js';
import { canonical } from './merge.js';

/** @import { Finding } from '../core/core.d.ts' */

// What makes a card one that nobody could go on writing: the others are drafts.
const unreadable = new Set([
  'wrong-type',
  'not-json',
  'name-twice',
  'too-much',
  'too-large',
  'text-too-long',
  'number-too-large',
  'more-findings',
  'core-crashed',
]);

/** Cards that come in beside those that are here: two contents are two versions. */
export class CardsIn {
  /** @type {Set<string>} the contents that are here */
  #contents = new Set();
  /** @type {Set<string>} */
  #keys = new Set();
  /** @type {Set<string>} the contents in the file */
  #seen = new Set();

  /** Looks at what is here. */
  static async open() {
    const cards = new CardsIn();
    for await (const records of whole.chunks('cards', 100))
      for (const { key, card, text } of records) cards.#note(key, text, canonical(card));
    return cards;
  }

  #note(key, ...contents) {
    this.#keys.add(key);
    for (const content of contents) if (content) this.#contents.add(content);
  }

  /**
   * Says of each card what comes of it: {again: it stood in the file before}, {why: it
   * can't be read}, {record, beside} to be kept, or nothing for what is here.
   *
   * @param {any[]} cards
   */
  async take(cards) {
    const texts = cards.map(({ card }) => canonical(card));
    const unknown = texts.filter((text) => !this.#contents.has(text));
    const checked = new Map((await checkTexts(unknown)).map((entry, n) => [unknown.at(n), entry]));
    const taken = [];
    for (const [n, card] of cards.entries())
      taken.push(await this.#takeOne(card, texts[n] ?? '', checked.get(texts[n] ?? '')));
    return taken;
  }

  async #takeOne(card, content, checked) {
    const again = this.#seen.has(content);
    this.#seen.add(content);
    if (again) return { again };
    if (!checked) return {};
    const why = whyUnread(checked.text, checked.findings);
    if (why) return { why };
    if (checked.text && this.#contents.has(checked.text)) return {};
    const key = await this.#freeKey(card.key, content);
    this.#note(key, checked.text, content);
    return { record: recordOf(key, card, checked), beside: key !== card.key };
  }

  /** The card's own key, or one that follows from its content. */
  async #freeKey(own, content) {
    let key = own;
    for (let text = content; this.#keys.has(key); text += ' ') key = await digest(text);
    return key;
  }
}

/**
 * @param {string} [text]
 * @param {Finding[]} [findings]
 */
const whyUnread = (text, findings = []) =>
  text ? undefined : findings.find(({ code }) => unreadable.has(code));

/** What is kept of a card; of a draft, its name is all that lists can show. */
function recordOf(key, { card, changed, pinned = false }, { text = '', bike }) {
  const draft = () => ({
    id: card.id,
    name: `${card.make} ${card.model}`.trim(),
    layout: `layout.${card.layout}`,
    unfinished: true,
  });
  return { key, card, text, bike: text ? bike : draft(), changed, pinned };
}

/** @param {string} text */
async function digest(text) {
  const bytes = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return [...new Uint8Array(bytes).subarray(0, 16)]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
}
