import { call } from '../core/client.js';
import { Drafts } from '../store/drafts.js';
import { aboutLast, factsOf, tell } from '../store/facts.js';
import { settings } from '../store/settings.js';
import { t } from '../words/catalogue.js';
import { today } from '../words/dates.js';

/** @import { Finding, OldOilAnswer, ShelfAnswer, WrenchBook } from '../core/core.d.ts' */
/** @import { Fact } from '../store/records.d.ts' */

/** What is written, without what every fact has.
 * @typedef {{ kind: string, what?: string, value?: string, text?: string, job?: string, signs?: { [name: string]: string } }} Told
 */

/** What the core says of a book, asked for it by its operation. @type {Map<string, (input: object) => Promise<any>>} */
const ask = new Map([
  ['oil', (input) => call('old-oil', input)],
  ['shelf', (input) => call('shelf', input)],
  ['wrench', (input) => call('wrenches', input)],
]);

/** One of the books, as it stands, while one writes into it. */
export class Book {
  /** @type {'oil' | 'shelf' | 'wrench'} */
  name;
  /** @type {Fact[]} */
  facts = [];
  /** @type {Partial<OldOilAnswer & ShelfAnswer & WrenchBook>} what the core says of it */
  answer = {};
  /** @type {Map<string, Finding[]>} what was found of the last act, by what it was about */
  found = new Map();
  /** @type {Drafts} */
  drafts;
  /** What else the core is asked: jobs, or what they want. @type {object} */
  asked = {};
  app;

  constructor(name, app, drafts) {
    this.name = name;
    this.app = app;
    this.drafts = drafts;
  }

  /**
   * @param {'oil' | 'shelf' | 'wrench'} name
   * @param {any} app
   * @param {object} [asked]
   */
  static async open(name, app, asked = {}) {
    const book = new Book(name, app, await Drafts.open(`book ${name}`));
    book.asked = asked;
    await app.attempt(() => book.load());
    return book;
  }

  /** Reads what is written in it. */
  async load() {
    this.facts = await factsOf(this.name);
    this.answer = await this.#ask(this.facts);
  }

  async #ask(facts) {
    const { system } = settings;
    const input = { facts, system, today: today(), ...this.asked };
    const { ok, findings } = (await ask.get(this.name)?.(input)) ?? {};
    return ok ?? { findings };
  }

  /** What the core says of a fact that is to be written behind those of all subjects. */
  async #check(of, own) {
    const all = await factsOf(this.name);
    const facts = [...all.filter((fact) => fact.of !== of), ...own];
    const { system } = settings;
    const input = { facts, system, today: today(), adding: true };
    return aboutLast(await ask.get(this.name)?.(input), facts.length - 1);
  }

  /**
   * Writes something into the book; resolves to whether it is kept. What is found of it
   * stands at `about`.
   *
   * @param {string} about
   * @param {string} of the subject
   * @param {Told} told
   * @param {{ drafts?: string[], photo?: any, say?: string }} [how]
   */
  async tell(about, of, told, { say, ...how } = {}) {
    const signs = told.kind === 'undo' ? undefined : { ...told.signs, system: settings.system };
    const fact = /** @type {any} */ ({ ...told, ...(signs && { signs }) });
    const check = (own) => this.#check(of, own);
    const found = await this.app.attempt(() => tell(this.name, of, fact, { check, ...how }));
    if (!found) return false;
    this.found.set(about, found);
    const kept = !found.some(({ grade }) => grade === 'refuse');
    if (kept) await this.app.attempt(() => this.load());
    if (kept && say) this.app.say(t(say));
    else this.app.redraw();
    return kept;
  }

  /** Takes an entry back. */
  undo = (about, of, id) => this.tell(about, of, { kind: 'undo', what: id }, { say: 'job.undone' });
}
