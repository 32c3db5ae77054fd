// What was found to be in use, judged by the data.
import { lookUp, missing } from './support.js';

/** Collects uses of features, and keeps those that a promised browser lacks. */
export class Report {
  #old = new Set(); // ways that every promised browser has

  /** @param {Record<string, string>} promised versions by the data's names of browsers */
  constructor(promised) {
    this.promised = promised;
    /** Newer than promised: by key, {key, missing, places, ...more}. */
    this.found = new Map();
    /** What the data doesn't know, by what it is: 'css property: zoom'. */
    this.unknown = new Map();
    /** What is wrong however it is excepted. */
    this.wrong = [];
  }

  /** Whether a promised browser lacks the feature at this way through the data. */
  lacks(way) {
    return Object.keys(missing(lookUp(way), this.promised)).length > 0;
  }

  /**
   * A feature in use. `of` is what to say of it if the data has nothing at that way.
   * `place` is a text, or a function that gives one. Gives what was found, undefined if
   * it is old enough.
   */
  use(way, place, of) {
    const key = way.join('.');
    if (this.#old.has(key)) return undefined;
    const node = lookUp(way);
    if (!node) {
      this.#note(this.unknown, of ?? key, place);
      return undefined;
    }
    const lacking = missing(node, this.promised);
    if (!Object.keys(lacking).length) {
      this.#old.add(key);
      return undefined;
    }
    const found = this.#note(this.found, key, place);
    found.missing = lacking;
    return found;
  }

  /** What no feature of the data describes. */
  odd(what, place) {
    this.#note(this.unknown, what, place);
  }

  /** A use that takes others down with it. */
  bad(what, place) {
    this.wrong.push(`${what} (${typeof place === 'function' ? place() : place})`);
  }

  #note(map, key, place) {
    if (!map.has(key)) map.set(key, { key, places: [] });
    const entry = map.get(key);
    const at = typeof place === 'function' ? place() : place;
    if (!entry.places.includes(at)) entry.places.push(at);
    return entry;
  }

  /** The keys of what is newer than promised, in order. */
  keys() {
    return [...this.found.keys()].sort();
  }
}
