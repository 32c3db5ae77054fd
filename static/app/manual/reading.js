import { call } from '../core/client.js';
import { limits } from '../core/limits.js';
import { draftRecord } from '../cards/record.js';
import { blankCard } from '../edit/parts.js';
import { file } from '../site/data.js';
import { inTurn } from '../site/in-turn.js';
import { newId } from '../site/new-id.js';
import { own } from '../site/own.js';
import { Drafts } from '../store/drafts.js';
import * as store from '../store/store.js';
import { scopeOf } from '../store/waiting-pages.js';
import { t } from '../words/catalogue.js';

/** @import { Card, Stand } from '../core/core.d.ts' */

/**
 * A page that was pasted: its text, its number if it is known, what the person said of
 * pieces of it; and what the core reads in it.
 *
 * @typedef {{ text: string, number?: string, said: any[], answer?: any, asked?: string, handed?: Map<string, { input: string, answer: any }> }} Page
 *
 * What the person decided about a reading: to take it, as it is or as it was typed, or to
 * leave it.
 * @typedef {{ take: boolean, text?: string, chosen?: boolean }} Decision
 */

/** @type {WeakMap<any[], any[]>} readings of a page -> the same in the order of a plan */
const inOrder = new WeakMap();

/** The readings of what was read, in the order of a plan: of many bikes they are thousands, and are asked for at each picture. */
function ordered({ readings = [] } = {}) {
  const known = inOrder.get(readings);
  if (known) return known;
  if (!limits.whats) return readings; // the core has yet to say which order that is
  const order = new Map(limits.whats.map((what, n) => [what, n]));
  const place = ({ what }) => order.get(what) ?? order.size;
  const list = [...readings].sort((one, other) => place(one) - place(other));
  inOrder.set(readings, list);
  return list;
}

/**
 * The pages of a manual and what is taken from them into a card. All of it follows from
 * the texts and from what the person decided, which are kept at each tap; the card is
 * written at the end.
 */
export class Reading {
  /** @type {Page[]} */
  pages = [];
  /** @type {Card | undefined} the card with what was taken */
  card;
  gaps = []; // what a plan needs and the pages don't say
  found = []; // what is odd about the card as a whole
  model = ''; // of several that the text is of
  layout = ''; // as the person said it
  /** @type {{ make?: string, model?: string }} */
  names = {}; // make and model as the person typed them
  /** @type {{ n: number, page: Page, decided: [string, Decision][] } | undefined} the page that was taken away last */
  away;
  /** @type {Map<string, any[]>} what was found about a reading that the card didn't take */
  refused = new Map();
  /** @type {Promise<void>} */
  ready = Promise.resolve();
  #turn = inTurn();
  /** @type {{ sure: Set<any>, questions: Set<any>[], contested: string[] }} what the core says of readings */
  #judged = { sure: new Set(), questions: [], contested: [] };
  /** @type {Map<string, Decision>} */
  #decided = new Map();
  #key;
  #record;
  #table;
  /** @type {Drafts} */
  #drafts;

  /**
   * What was pasted for the card of that key, or for a new one; undefined when there is no
   * such card. It is read by the time that `ready` resolves: the core may take long to start.
   *
   * @param {string} [key]
   */
  static async open(key) {
    const record = key ? await store.card(key) : undefined;
    if (key && !record) return undefined;
    const reading = new Reading();
    reading.#record = record;
    reading.#table = await file('entries.json');
    reading.#drafts = await Drafts.open(scopeOf(key));
    reading.#restore(reading.#drafts.get('state') ?? {});
    reading.#key ??= key ?? newId();
    reading.ready = reading.#turn(() => reading.#work());
    return reading;
  }

  #restore({ key, pages = [], model = '', layout = '', names = {}, decided = [] }) {
    const texts = pages.map((page, n) => ({ ...page, text: this.#drafts.get(`text ${n}`) }));
    Object.assign(this, { pages: texts, model, layout, names });
    this.#key = key;
    this.#decided = new Map(decided);
  }

  /** Whether it is for a bike that is here already. */
  get known() {
    return Boolean(this.#record);
  }

  /** Everything that was read, in the order of a plan, with its page and what was decided. */
  get all() {
    return this.pages.flatMap((page, n) =>
      ordered(page.answer?.ok).map((is) => {
        const { from = 0, to } = is.quote;
        const id = `${n} ${is.what} ${from} ${to}`;
        return { ...is, is, quote: { from, to }, id, page, n, decided: this.#decided.get(id) };
      }),
    );
  }

  /** What is sure and not decided about. */
  get sure() {
    return this.all.filter(({ is, decided }) => this.#judged.sure.has(is) && !decided);
  }

  /** What was taken, as it was taken. */
  get taken() {
    return this.all
      .filter((one) => one.decided?.take && !this.refused.has(one.id))
      .map((one) => ({ ...one, text: one.decided.text ?? one.text }));
  }

  /** What was left out. */
  get left() {
    return this.all.filter(({ text, decided }) => text && decided && !decided.take);
  }

  /** What has to be asked, one after the other: readings of one thing. */
  get questions() {
    const { all } = this;
    return this.#judged.questions
      .map((asked) => all.filter(({ is }) => asked.has(is)))
      .filter((list) => list.length);
  }

  /** The models that the pages are of, where they are several. */
  get models() {
    const all = [...new Set(this.pages.flatMap(({ answer }) => answer?.ok?.models ?? []))];
    return all.length > 1 ? all : [];
  }

  /** How the bike keeps its oil, as far as the pages tell: {word, sure}. */
  get layoutRead() {
    const all = this.pages.flatMap(({ answer }) => answer?.ok?.layout ?? []);
    return all.find(({ sure }) => sure === 'yes') ?? all[0];
  }

  /** Whether the person has to say which of several models it is. */
  get asksModel() {
    return this.models.length > 0 && !this.model;
  }

  /** Whether the person has to say how the bike keeps its oil. */
  get asksLayout() {
    return !this.known && !this.layout && this.layoutRead?.sure !== 'yes';
  }

  get name() {
    const { all } = this;
    const { contested } = this.#judged;
    if (contested.includes('make') || contested.includes('model')) return '';
    const said = (is) => all.find(({ what }) => what === is)?.text ?? '';
    const { make, model } = this.card ?? {};
    return `${make || said('make')} ${model || (this.asksModel ? '' : said('model'))}`.trim();
  }

  /** What the model that was chosen is called; '' where they were told apart by their years. */
  get modelName() {
    return this.all.some(({ what, text }) => what === 'model' && text === this.model)
      ? this.model
      : '';
  }

  /**
   * The model that was chosen, for a page that is of it and of others.
   *
   * @param {Page} page
   */
  #modelOn({ answer }) {
    return answer?.ok?.models?.includes(this.model) ? this.model : undefined;
  }

  /** Does something to what is known, works out what follows, and keeps it. */
  #then(change) {
    return this.#turn(async () => {
      const away = this.away;
      change();
      if (this.away === away) this.away = undefined; // only what was done last is undone
      this.#keep();
      await this.#work();
      this.#keep(); // what the bike is called follows from what was read
    });
  }

  /** Adds pages, each with its text. */
  add(texts) {
    return this.#then(() => {
      for (const text of texts) this.pages.push({ text, said: [] });
    });
  }

  /** Whether a text is among the pages. */
  has = (text) => this.pages.some((page) => page.text.trim() === text.trim());

  /** What a page is called where there are several; '' where it is the only one. */
  nameOf(page) {
    const number = numberOf(page);
    const count = this.pages.length;
    if (count < 2) return '';
    return number
      ? t('manual.page', { number })
      : t('manual.page.nth', { nth: this.pages.indexOf(page) + 1, count });
  }

  /** The words of a manual that the card has what it says from, in place of a reading; '' where it has none. */
  wordsInCard({ at = '' }) {
    const [, list, index, ...names] = at.split('/');
    const id = own(Object(own(Object(this.card), list)), index)?.id;
    const name = id ? [id, ...names].join('/') : at;
    const quote = this.card?.quotes?.find(({ of = [] }) => of.some((one) => one.at === name));
    return quote?.words ?? '';
  }

  /** Takes a page away, and what was decided about it. */
  remove = (n) =>
    this.#then(() => {
      const [page] = this.pages.splice(n, 1);
      const decided = [...this.#decided].filter(([id]) => pageOf(id) === n);
      for (const [id] of decided) this.#decided.delete(id);
      this.away = { n, page, decided };
      this.#renumber((at) => (at > n ? at - 1 : at));
    });

  /** Puts the page that was taken away last where it was. */
  bringBack = () =>
    this.#then(() => {
      const { n, page, decided } = /** @type {NonNullable<Reading['away']>} */ (this.away);
      this.#renumber((at) => (at < n ? at : at + 1));
      this.pages.splice(n, 0, page);
      for (const [id, decision] of decided) this.#decided.set(id, decision);
    });

  /** Decisions go with their pages, which have other numbers now. */
  #renumber(now) {
    const all = [...this.#decided].map(([id, decision]) => {
      const rest = id.slice(id.indexOf(' '));
      return /** @type {[string, Decision]} */ ([now(pageOf(id)) + rest, decision]);
    });
    this.#decided = new Map(all);
    this.refused.clear();
  }

  takeSure = () =>
    this.#then(() => {
      for (const { id } of this.sure) this.#decided.set(id, { take: true });
    });

  /** Puts what was taken back among what was found. */
  putBack = () => this.#then(() => this.#decided.clear());

  /** Puts readings that were left out back among what was found. */
  undecide = (list) =>
    this.#then(() => {
      for (const { id } of list) this.#decided.delete(id);
    });

  /** Leaves readings out. */
  leave = (list) =>
    this.#then(() => {
      for (const { id } of list) this.#decided.set(id, { take: false });
    });

  /**
   * Takes one of several, as it is or as it was typed, with those that say it in the same
   * words, and leaves the others.
   */
  choose = (list, one, text) =>
    this.#then(() => {
      for (const other of list) {
        const take = !text && other.text === one.text;
        this.#decided.set(other.id, take ? { take, chosen: true } : { take });
      }
      this.#decided.set(one.id, { take: true, text, chosen: true });
    });

  /** Says something of the bike: which model, how it keeps its oil, what it is called. */
  say = (values) => this.#then(() => Object.assign(this, values));

  number = (page, number) => this.#then(() => (page.number = number || undefined));

  /**
   * Says what a piece of a page is. Resolves to the findings where it can't be that.
   *
   * @param {Page} page
   * @param {{ what: string, quote: { from: number, to: number } }} said
   */
  async tell(page, said) {
    const trial = await this.#read({ ...page, said: [...page.said, said] }, undefined);
    if (!trial.ok) return trial.findings;
    const is = ({ what, quote }) =>
      what === said.what && quote.from < said.quote.to && quote.to > said.quote.from;
    await this.#then(() => {
      page.said.push(said);
      page.answer = trial;
      const list = this.all.filter((one) => one.page === page && is(one));
      const [one] = list;
      if (!one?.text) return;
      // Words that are of one thing are of no other.
      for (const other of this.all)
        if (other.page === page && other.text === one.text && is({ ...other, what: said.what }))
          this.#decided.set(other.id, { take: false });
      this.#decided.set(one.id, { take: true, chosen: true });
    });
    return [];
  }

  /** What stands in a field of that name and is not entered. */
  typed = (field) => this.#drafts.get(`typed ${field}`) ?? '';

  /** Notes what stands in a field, at each letter; '' once it is entered. */
  type(field, text) {
    if (text) this.#drafts.put(`typed ${field}`, text);
    else this.#drafts.drop(`typed ${field}`);
  }

  /** Writes the card; resolves to the key under which it lies. */
  finish() {
    return this.#turn(async () => {
      const before = this.#record ?? (await store.card(this.#key));
      await store.putCard(await draftRecord(this.#key, this.card, before));
      this.forget();
      return this.#key;
    });
  }

  /** Forgets all pages. */
  forget() {
    for (const [name] of this.#drafts.all()) this.#drafts.drop(name);
    this.pages = [];
    this.#decided.clear();
  }

  #keep() {
    this.pages.forEach(({ text }, n) => {
      if (this.#drafts.get(`text ${n}`) !== text) this.#drafts.put(`text ${n}`, text);
    });
    const pages = this.pages.map(({ number, said }) => ({ number, said }));
    const { model, layout, names, name } = this;
    const decided = [...this.#decided];
    this.#drafts.put('state', { key: this.#key, pages, model, layout, names, name, decided });
  }

  /**
   * Reads the pages one after the other, each beside what the card says by then, and beside
   * what the pages before it say for sure, taken or not.
   */
  async #work() {
    if (!this.known)
      // the card begins with the layout that the pages tell
      for (const page of this.pages) page.answer ??= await this.#read(page, undefined);
    let card = this.#begun();
    let believed = card;
    let asked = this.known;
    Object.assign(this, { gaps: [], found: [] });
    this.refused.clear();
    for (const [n, page] of this.pages.entries()) {
      page.answer = await this.#read(page, asked ? believed : undefined);
      asked = true;
      card = await this.#take(card, page, n);
      if (n + 1 < this.pages.length) believed = await this.#believe(believed, page, n);
    }
    const { make, model } = this.names;
    card.make ||= make ?? '';
    card.model ||= model ?? '';
    this.card = card;
    await this.#judge();
  }

  /**
   * How a reading stands, in a word of the core.
   *
   * @returns {Stand | undefined}
   */
  #standOf({ id, sure, decided }) {
    if (!decided) return sure === 'yes' ? 'sure' : undefined;
    if (!decided.take) return 'left';
    return this.refused.has(id) ? 'refused' : 'taken';
  }

  /** What is sure and what has to be asked, of the readings of all pages. */
  async #judge() {
    const { all } = this;
    const readings = all.map((one) => {
      const { what, text, model, decided } = one;
      return { what, text: decided?.text ?? text, model, stands: this.#standOf(one) };
    });
    const models = this.asksModel ? this.models : [];
    const { ok = {}, findings = [] } = await call('judge-pages', { readings, models });
    this.found.push(...findings);
    const { sure = [], asked = [], contested = [] } = ok;
    const questions = Array.from({ length: Math.max(0, ...asked) }, (_, n) =>
      all.filter((_, k) => asked.at(k) === n + 1),
    );
    const those = (list) => new Set(list.map(({ is }) => is));
    this.#judged = {
      sure: those(sure.flatMap((n) => all.at(n) ?? [])),
      questions: questions.map(those),
      contested,
    };
  }

  /** The card that everything is taken into. */
  #begun() {
    if (this.#record) return structuredClone(this.#record.card);
    const layout = this.layout || this.layoutRead?.word || 'wet-sump';
    return blankCard(layout, '', this.#table, `own-${this.#key}`);
  }

  /** What the core reads in a page, which it is asked for once. */
  async #read(page, card) {
    const { text, said: say } = page;
    const input = JSON.stringify({ text, say, card, model: this.model || undefined });
    if (page.asked === input) return page.answer;
    page.asked = input;
    const answer = await call('read-page', input);
    if (!answer.ok) page.asked = undefined; // a core that stopped may read it the next time
    return answer;
  }

  /** The card with what is taken of a page. */
  async #take(card, page, n) {
    const taken = this.all.filter((one) => one.n === n && one.decided?.take);
    if (!taken.length) return card;
    const { ok, findings = [] } = await this.#hand('taken', card, page, taken);
    for (const { where = '', ...found } of ok?.findings ?? findings) {
      const [, list, at] = where.split('/');
      const one = list === 'readings' ? taken[Number(at)] : undefined;
      if (!one) this.found.push({ where, ...found });
      else if (!ok?.at[Number(at)] || isDifference(found))
        this.refused.set(one.id, [...(this.refused.get(one.id) ?? []), found]);
    }
    this.gaps = ok?.gaps ?? this.gaps;
    return ok?.card ?? card;
  }

  /** The card with all that a page says for sure, too. */
  async #believe(card, page, n) {
    const believed = this.all.filter(
      ({ n: of, decided, sure, text }) =>
        of === n && text && (decided ? decided.take : sure === 'yes'),
    );
    if (!believed.length) return card;
    const { ok } = await this.#hand('believed', card, page, believed);
    return ok?.card ?? card;
  }

  /**
   * What the core makes of a card and readings of a page, which it is asked for once.
   *
   * @param {'taken' | 'believed'} as
   * @param {Card} card
   * @param {Page} page
   * @param {any[]} list
   */
  async #hand(as, card, page, list) {
    const readings = list.map(({ what, text, quote, model, decided }) => ({
      what,
      text: decided?.text ?? text,
      quote,
      model,
      over: decided?.chosen,
    }));
    const { make, model } = Object.fromEntries(list.map((one) => [one.what, one.text]));
    const name = [make ?? card.make, model ?? card.model].filter(Boolean).join(' ');
    const title = t(name ? 'manual.title-of' : 'manual.title-none', { name });
    const input = JSON.stringify({
      card,
      readings,
      text: page.text,
      title: card.sources?.[0]?.title || title,
      page: numberOf(page) || undefined,
      model: this.#modelOn(page),
    });
    page.handed ??= new Map();
    const before = page.handed.get(as);
    if (before?.input === input) return before.answer;
    const answer = await call('take-readings', input);
    page.handed.set(as, { input, answer });
    return answer;
  }
}

/** The place, among the pages, of the one that a reading is of. */
const pageOf = (id) => Number(id.slice(0, id.indexOf(' ')));

/**
 * The number that is printed on a page, or that the person says; '' where nobody does.
 *
 * @param {{ number?: string, answer?: any }} page
 */
export const numberOf = ({ number, answer }) => number ?? answer?.ok?.page ?? '';

/** Whether a finding says that the page says otherwise than the card, or than elsewhere. */
export const isDifference = ({ code }) =>
  ['reading-differs', 'reading-twice', 'manual-says-both'].includes(code);
