import { call } from '../core/client.js';
import { limits, loadLimits } from '../core/limits.js';
import { settings } from '../store/settings.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { plain } from '../words/search.js';

/** @import { FindFound, Thing } from '../core/core.d.ts' */

/**
 * A row of the list, as far as it is looked through.
 *
 * @typedef {{ text: string, volume?: string }} Row
 */

/**
 * What the core makes of what is typed: a volume, a slip of a letter, a question. One is
 * asked at a time, and of those that were typed meanwhile the last: no key waits for it.
 */
export class Seek {
  #see;
  #typed = '';
  /** @type {Row[]} */
  #rows = [];
  #lines = ''; // JSON of the rows
  /** @type {{ typed: string, rows: Row[], found: FindFound } | undefined} */
  #found;
  /** @type {Promise<void> | undefined} */
  #asking;

  /** @param {() => void} see called when something was found */
  constructor(see) {
    this.#see = see;
  }

  /**
   * Turns to another list.
   *
   * @param {Row[]} rows
   */
  turn(rows) {
    this.#rows = rows;
    this.#lines = '';
    return this.ask(this.#typed);
  }

  /**
   * Asks what is meant by that; resolves when it is known, or can't be.
   *
   * @param {string} typed
   */
  ask(typed) {
    this.#typed = typed;
    if (!typed.trim() || this.#found?.typed === typed) return this.#asking;
    this.#asking ??= this.#ask().finally(() => (this.#asking = undefined));
    return this.#asking;
  }

  /** What was found of what stands there now; undefined until it is known. */
  get found() {
    const { typed, rows, found } = this.#found ?? {};
    if (!found || typed !== this.#typed || rows !== this.#rows) return undefined;
    const those = (/** @type {number[]} */ places = []) =>
      places.flatMap((at) => rows.at(at) ?? []);
    const { fits, about, near = false, things = [] } = found;
    return { fits: those(fits), about: those(about), near, things };
  }

  async #ask() {
    await Promise.all([loadLimits(), loadWordsOf('work')]);
    for (let typed, rows; typed !== this.#typed || rows !== this.#rows;) {
      [typed, rows] = [this.#typed, this.#rows];
      if (!typed.trim()) continue;
      await new Promise((then) => setTimeout(then)); // the picture that answers the key comes first
      const { ok } = await call('find', this.#input(typed));
      if (!ok) continue; // what stands there letter by letter is found all the same
      this.#found = { typed, rows, found: ok };
      this.#see();
    }
  }

  #input(/** @type {string} */ typed) {
    this.#lines ||= JSON.stringify({
      lines: this.#rows.map(({ text }) => text),
      volumes: this.#rows.map(({ volume = '' }) => volume),
    }).slice(1);
    const things = limits.things ?? [];
    const names = Object.fromEntries(
      things.map((thing) => [thing, plain(t(`asked.names.${thing}`))]),
    );
    const { system } = settings;
    const asked = JSON.stringify({ typed: plain(typed), system, names });
    return `${asked.slice(0, -1)},${this.#lines}`;
  }
}
