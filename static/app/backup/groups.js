import { bounds, Fault } from './bounds.js';

/** @import { Incoming } from './read.js' */

/**
 * All that came in of one job, in the order in which it would count.
 *
 * @typedef {object} Group
 * @property {string} id
 * @property {Incoming[]} records
 * @property {Incoming[]} events
 * @property {Incoming[]} later what was beside, or aside: it counts after the others
 * @property {number} letters
 */

/**
 * Puts the lines of each job together. In a file of this app they stand together; where
 * they don't, the job is `scattered`: a second reading, which knows, gathers its lines.
 */
export class Groups {
  /** @type {Set<string>} ids of the jobs whose lines don't stand together */
  scattered;
  /** @type {Map<string, Group>} gathered until the end, or until their job comes */
  #waiting = new Map();
  /** @type {Set<string>} */
  #closed = new Set();
  /** @type {Group | undefined} */
  #open;
  #gathered = 0;

  /** @param {Set<string>} scattered as far as known */
  constructor(scattered) {
    this.scattered = scattered;
  }

  /**
   * Takes a record of a job, its events or what was beside it; gives the job before it, if
   * that is whole now.
   *
   * @param {Incoming} incoming
   * @returns {Group | undefined}
   */
  add(incoming) {
    const { kind, value } = incoming;
    const id = kind === 'job' ? value.id : value.job;
    let before;
    if (kind === 'job' && !incoming.again && id !== this.#open?.id) {
      before = this.close();
      if (!this.scattered.has(id) && !this.#seen(id)) this.#begin(id);
    }
    const group = this.#groupOf(id);
    put(group, incoming);
    if (group !== this.#open) this.#weigh(incoming.text.length);
    return before;
  }

  #begin(id) {
    const group = this.#waiting.get(id) ?? emptyGroup(id);
    if (this.#waiting.delete(id)) this.#weigh(-group.letters);
    this.#open = group;
  }

  /** Reports whether the job was closed before; then it is scattered. */
  #seen(id) {
    if (!this.#closed.has(id)) return false;
    this.scattered.add(id);
    return true;
  }

  /**
   * The one under way, or one that waits.
   *
   * @param {string} id
   * @returns {Group}
   */
  #groupOf(id) {
    const open = this.#open;
    if (open?.id === id) return open;
    this.#seen(id);
    const group = this.#waiting.get(id) ?? emptyGroup(id);
    this.#waiting.set(id, group);
    return group;
  }

  /** Counts what has to be held in memory. */
  #weigh(letters) {
    this.#gathered += letters;
    if (this.#gathered > bounds.gathered) throw new Fault('restore.too-scattered');
  }

  /** The job under way, which is whole now. */
  close() {
    const group = this.#open;
    if (group) this.#closed.add(group.id);
    this.#open = undefined;
    return group;
  }

  /** The jobs that were gathered. */
  rest() {
    const groups = [...this.#waiting.values()];
    this.#waiting.clear();
    return groups;
  }
}

/** @returns {Group} */
const emptyGroup = (id) => ({ id, records: [], events: [], later: [], letters: 0 });

/**
 * @param {Group} group
 * @param {Incoming} incoming
 */
function put(group, incoming) {
  const { kind, again } = incoming;
  group.letters += incoming.text.length;
  if (again || kind === 'beside') group.later.push(incoming);
  else if (kind === 'job') group.records.push(incoming);
  else group.events.push(incoming);
}
