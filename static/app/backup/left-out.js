import { factPicture, namesCustomer, ofPersons, personal } from '../store/persons.js';

/** @import { Beside, Fact, KeptEvent } from '../store/records.d.ts' */

/**
 * What a backup holds that is said to be without persons, and what it doesn't. A backup with
 * them holds all. Facts come before jobs, and both before pictures.
 */
export class LeftOut {
  #all;
  /** @type {Set<string>} pictures whose facts are told */
  #told = new Set();
  /** @type {Set<string>} pictures whose facts are not */
  #hidden = new Set();
  /** @type {Set<string>} */
  #jobs = new Set();
  /** @type {Set<string>} ids of the events of the last job that are not told */
  #silent = new Set();

  /** @param {boolean} all whether it holds what tells of persons */
  constructor(all) {
    this.#all = all;
  }

  /** @param {string} key */
  setting(key) {
    return this.#all || !ofPersons(key);
  }

  /** @param {Fact} fact */
  fact(fact) {
    if (this.#all) return true;
    const hidden = personal(fact);
    (hidden ? this.#hidden : this.#told).add(factPicture(fact.of, fact.id));
    return !hidden;
  }

  /** @param {string} id */
  job(id) {
    this.#jobs.add(id);
  }

  /**
   * Those events of a job that are told.
   *
   * @param {KeptEvent[]} events
   */
  events(events) {
    if (this.#all) return events;
    this.#silent = new Set(events.flatMap((event) => (namesCustomer(event) ? [event.id] : [])));
    return events.filter(({ id, of = '' }) => !this.#silent.has(id) && !this.#silent.has(of ?? ''));
  }

  /**
   * Whether another content of a job, or of an event of the last one, is told.
   *
   * @param {Beside} row
   */
  beside({ kind, id, text }) {
    if (kind === 'fact') return false; // it stands among the facts
    if (this.#all || kind === 'job') return true;
    try {
      return !this.#silent.has(id) && !namesCustomer(JSON.parse(text));
    } catch {
      return false;
    }
  }

  /**
   * @param {string} job
   * @param {string} id
   */
  photo(job, id) {
    if (this.#all) return true;
    const picture = factPicture(job, id);
    return !this.#hidden.has(picture) && (this.#jobs.has(job) || this.#told.has(picture));
  }
}
