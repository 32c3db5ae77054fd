import { bikeAt } from '../store/bike-at.js';
import { tellBike } from '../store/bikes.js';
import { bikeName } from '../store/bike-name.js';
import { logOf } from '../store/of-bike.js';
import { changesOf, laidOver } from '../store/over-card.js';
import * as store from '../store/store.js';
import { loadWordsOf } from '../words/catalogue.js';
import { newId } from '../site/new-id.js';

/** @import { Card, Change, Finding } from '../core/core.d.ts' */
/** @import { BikeAt } from '../store/bike-at.js' */
/** @import { BikeRow } from '../store/records.d.ts' */

/**
 * One bike, or a card as such: what is told of it, and the card that its plan is made of,
 * with its own figures over it.
 */
export class Machine {
  /** @type {BikeAt} */
  at;
  /** @type {Card | undefined} the card that counts, with the bike's own figures */
  card;
  /** @type {Card | undefined} the same without them */
  plain;
  /** @type {Finding[]} what of its own figures doesn't fit the card */
  findings = [];
  /** @type {Change[]} where the card differs from that which the last job on the bike had */
  changes = [];
  /** @type {{ id: string, row?: BikeRow, jobs: number }[]} the bikes that follow the same card */
  others = [];
  jobs = 0; // on the bike
  pending = false; // what is told of it is not read yet
  /** @type {Promise<unknown>} resolves when it is, or can't be */
  told = Promise.resolve();
  #corrected = false; // the card of today was taken

  /** @param {BikeAt} at */
  constructor(at) {
    this.at = at;
    this.card = this.plain = at.card;
  }

  /**
   * The machine of an address; `see` is called when what is told of it came late.
   *
   * @param {string} id
   * @param {boolean} alone a card as such
   * @param {() => void} see
   */
  static async open(id, alone, see) {
    const { late, ...at } = await bikeAt(id, alone);
    const machine = new Machine(at);
    if (!late) await machine.#work();
    else {
      machine.pending = true;
      machine.told = late
        .then((told) => machine.#take(told))
        .catch(() => (machine.pending = false)) // nothing can be told of it, and the frame says so
        .then(see);
    }
    return machine;
  }

  /** @param {BikeAt} at */
  async #take(at) {
    this.at = at;
    this.card = this.plain = at.card;
    await this.#work();
    this.pending = false;
  }

  /** What its own figures, its last job and its twins make of it. */
  async #work() {
    const { id, row, rows, card } = this.at;
    if (!card || !rows.length) return;
    const lines = id ? await logOf(id).catch(() => []) : [];
    this.jobs = lines.length;
    this.others = await twinsOf(this.at);
    if (!row) return;
    const last = lines[0] && (await store.job(lines[0].id));
    const before = last?.raw ?? last?.card;
    if (before?.id === card.id && !this.#corrected) {
      this.changes = await changesOf(before, card);
      if (this.changes.length) {
        this.plain = before;
        await loadWordsOf('changes').catch(() => {});
      }
    }
    await this.#lay();
  }

  async #lay() {
    const laid = this.plain && (await laidOver(this.plain, this.at.row?.figures));
    this.card = laid?.card;
    this.findings = laid?.findings ?? [];
  }

  /** Takes the card as it is today, in place of that which the last job had. */
  async correct() {
    this.#corrected = true;
    this.changes = [];
    this.plain = this.at.card;
    await this.#lay();
  }

  get id() {
    return this.at.id;
  }

  get row() {
    return this.at.row;
  }

  get model() {
    return this.card ? `${this.card.make} ${this.card.model}` : '';
  }

  get name() {
    return bikeName(this.row, this.model);
  }

  /** Whether one has to say which bike is meant before a job begins. */
  get ambiguous() {
    return !this.id || (this.id === this.at.card?.id && this.others.length > 0);
  }

  /** What the job keeps beside the laid card, where figures lie over it. */
  get raw() {
    return this.card === this.plain ? undefined : this.plain;
  }
}

/**
 * The other bikes that follow the card of this one and are in use.
 *
 * @param {BikeAt} at
 */
async function twinsOf({ id, card, rows }) {
  const used = new Map();
  for (const { bike } of await store.log()) used.set(bike, (used.get(bike) ?? 0) + 1);
  const own = rows.find((row) => row.id === card?.id);
  const ids = rows
    .filter((row) => (row.card ?? row.id) === card?.id && !row.into && !row.aside)
    .map((row) => row.id);
  // The bike that the card implies is one as soon as a job was done on it.
  if (card && !own && used.has(card.id)) ids.unshift(card.id);
  return [...new Set(ids)]
    .filter((other) => other !== id)
    .map((other) => ({
      id: other,
      row: rows.find((row) => row.id === other),
      jobs: used.get(other) ?? 0,
    }));
}

/**
 * Begins another bike of a card; resolves to its id, or to undefined when it was refused.
 *
 * @param {string} card id of it
 */
export async function another(card) {
  const id = newId();
  const found = await tellBike(id, { kind: 'follows', value: card });
  return found.some(({ grade }) => grade === 'refuse') ? undefined : id;
}
