import { bikeAt } from '../store/bike-at.js';
import { bikeName } from '../store/bike-name.js';
import { tellBike } from '../store/bikes.js';
import { Drafts } from '../store/drafts.js';
import { factsOf } from '../store/facts.js';
import { logOf } from '../store/of-bike.js';
import { withOwn } from '../store/over-card.js';
import { settings } from '../store/settings.js';
import * as store from '../store/store.js';
import { file } from '../site/data.js';
import { newId } from '../site/new-id.js';

/** @import { Card, Finding, OwnPlace } from '../core/core.d.ts' */
/** @import { BikeRow, Fact, LogLine } from '../store/records.d.ts' */

/** What is told of a bike, while one tells more of it. */
export class Telling {
  id;
  /** @type {BikeRow | undefined} */
  row;
  /** @type {BikeRow[]} of all bikes */
  rows = [];
  /** @type {Card | undefined} that it follows, without its own figures */
  card;
  /** @type {{ id: string, name: string }[]} the cards that it may follow */
  cards = [];
  /** @type {LogLine[]} of its jobs, the newest first */
  lines = [];
  /** @type {LogLine[]} of all jobs */
  log = [];
  root = ''; // the bike that it went into
  /** @type {Map<string, Finding[]>} what was found of the last act, by what it was about */
  found = new Map();
  /** @type {Finding[]} what of its own figures doesn't fit its card */
  odd = [];

  /** @type {OwnPlace[]} what it may have of its own */
  places = [];
  /** @type {Drafts} */
  drafts;
  /** @type {{ [what: string]: string }} what is being chosen in a section, and not told yet */
  chosen = {};
  #app;

  constructor(id, app, drafts) {
    this.id = id;
    this.drafts = drafts;
    this.#app = app;
  }

  static async open(id, app) {
    const telling = new Telling(id, app, await Drafts.open(`bike ${id}`));
    await telling.load();
    return telling;
  }

  /** Reads what is told of it. */
  async load() {
    const { late, ...soon } = await bikeAt(this.id);
    const at = (await late) ?? soon;
    const { rows } = at;
    const row = rows.find(({ id }) => id === this.id);
    const [lines, log, own, { bikes = [] }] = await Promise.all([
      logOf(this.id),
      store.log(),
      store.lines(),
      file('bikes.json'),
    ]);
    const root = row?.into ?? '';
    const cards = [...own.map(({ bike }) => bike), ...bikes];
    const ofId = new Map(cards.map((card) => [card.id, card]));
    Object.assign(this, { row, rows, lines, log, root, card: at.card, cards: [...ofId.values()] });
    this.#sort();
    const laid = at.card && (await withOwn(at.card, row?.figures));
    this.odd = laid?.findings ?? [];
    this.places = laid?.places ?? [];
  }

  /** Whether there is such a bike. */
  get known() {
    return Boolean(this.card || this.row);
  }

  get model() {
    return this.card ? `${this.card.make} ${this.card.model}` : (this.lines[0]?.model ?? '');
  }

  get name() {
    return bikeName(this.row, this.model);
  }

  /** The owner is asked for by those who work for others, and shown wherever there is one. */
  get withOwner() {
    return settings.forOthers || Boolean(this.row?.owner || this.row?.reach);
  }

  /** What another bike is called in a list. */
  nameOf(id) {
    const row = this.#ofId.get(id);
    const twin = row && this.#twin(row) ? this.model : '';
    return bikeName(row, this.#lastOf.get(id)?.model || twin) || id;
  }

  /** Whether a bike follows the same card. */
  #twin(row) {
    return (row?.card ?? row?.id) === (this.row?.card ?? this.card?.id);
  }

  /** @type {Map<string, BikeRow>} */
  #ofId = new Map();
  /** @type {Map<string, LogLine>} the newest job of each bike */
  #lastOf = new Map();

  /**
   * All other bikes, of which something is told or on which a job was done: twins first, then
   * those seen last.
   *
   * @type {string[]}
   */
  others = [];

  #sort() {
    const { rows, log } = this;
    this.#ofId = new Map(rows.map((row) => [row.id, row]));
    this.#lastOf = new Map([...log].reverse().map((line) => [line.bike, line]));
    const ids = new Set([...this.#ofId.keys(), ...this.#lastOf.keys()]);
    const rank = (id) => {
      /** @type {Partial<BikeRow>} */
      const row = this.#ofId.get(id) ?? { id };
      const [, last] = [row.changed ?? '', this.#lastOf.get(id)?.started ?? ''].sort();
      return `${Number(this.#twin(row))} ${last}`;
    };
    this.others = [...ids]
      .filter((id) => id && id !== this.id && !this.#ofId.get(id)?.into)
      .map((id) => ({ id, rank: rank(id) }))
      .sort((a, b) => (a.rank < b.rank ? 1 : -1))
      .map(({ id }) => id);
  }

  /**
   * Tells something of this bike, or of another; resolves to whether it is kept. What is
   * found of it stands at `about`.
   *
   * @param {string} about
   * @param {Partial<Fact> & { kind: string }} told
   * @param {{ of?: string, drafts?: string[], photo?: any }} [how]
   */
  async tell(about, told, { of = this.id, ...how } = {}) {
    const found = await this.#app.attempt(() => tellBike(of, told, how));
    if (!found) return false;
    this.found.set(about, found);
    const kept = !found.some(({ grade }) => grade === 'refuse');
    if (kept) await this.#app.attempt(() => this.load());
    this.#app.redraw();
    return kept;
  }

  /**
   * Takes the last fact of that kind back, which says something of this bike or of another.
   *
   * @param {string} about
   * @param {string} kind
   * @param {string} [of]
   */
  async takeBack(about, kind, of = this.id) {
    const facts = await this.#app.attempt(() => factsOf('bike', of));
    const last = facts && standing(facts).findLast((fact) => fact.kind === kind);
    return Boolean(last) && this.tell(about, { kind: 'undo', what: last.id }, { of });
  }

  /** Begins another bike of the same card; resolves to its id. */
  async begin() {
    const id = newId();
    const card = this.row?.card ?? this.card?.id;
    return (await this.tell('begin', { kind: 'follows', value: card }, { of: id })) ? id : '';
  }

  choose(values) {
    Object.assign(this.chosen, values);
    this.#app.redraw();
  }

  say(sentence) {
    this.#app.say(sentence);
  }
}

/** Facts that are not taken back: an undo holds unless it is undone itself. */
function standing(facts) {
  const undone = new Set();
  for (const { id, kind, what } of [...facts].reverse())
    if (kind === 'undo' && !undone.has(id)) undone.add(what);
  return facts.filter(({ id }) => !undone.has(id));
}
