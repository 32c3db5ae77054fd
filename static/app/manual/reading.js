import { call } from '../core/client.js';
import { limits } from '../core/limits.js';
import { draftRecord } from '../cards/record.js';
import { blankCard } from '../edit/parts.js';
import { file } from '../site/data.js';
import { inTurn } from '../site/in-turn.js';
import { newId } from '../site/new-id.js';
import { Drafts } from '../store/drafts.js';
import * as store from '../store/store.js';
import { t } from '../words/catalogue.js';
import { isList } from './what.js';

/** @import { Card } from '../core/core.d.ts' */

/**
 * A page that was pasted: its text, its number if it is known, what the person said of
 * pieces of it; and what the core reads in it.
 *
 * @typedef {{ text: string, number?: string, said: any[], answer?: any, asked?: string, taken?: any, handed?: string }} Page
 *
 * What the person decided about a reading: to take it, as it is or as it was typed, or to
 * leave it.
 * @typedef {{ take: boolean, text?: string, chosen?: boolean }} Decision
 */

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
  busy = false;
  /** @type {Map<string, any[]>} what was found about a reading that the card didn't take */
  refused = new Map();
  #turn = inTurn();
  /** @type {Map<string, Decision>} */
  #decided = new Map();
  #key;
  #record;
  #table;
  /** @type {Drafts} */
  #drafts;

  /**
   * What was pasted for the card of that key, or for a new one; undefined when there is no
   * such card.
   *
   * @param {string} [key]
   */
  static async open(key) {
    const record = key ? await store.card(key) : undefined;
    if (key && !record) return undefined;
    const reading = new Reading();
    reading.#record = record;
    reading.#table = await file('entries.json');
    reading.#drafts = await Drafts.open(`manual ${key ?? 'new'}`);
    reading.#restore(reading.#drafts.get('state') ?? {});
    reading.#key ??= key ?? newId();
    await reading.#work();
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
    const order = new Map((limits.whats ?? []).map((what, n) => [what, n]));
    const places = ({ what: one }, { what: other }) =>
      (order.get(one) ?? order.size) - (order.get(other) ?? order.size);
    return this.pages.flatMap((page, n) =>
      [...(page.answer?.ok?.readings ?? [])].sort(places).map((reading) => {
        const { from = 0, to } = reading.quote;
        const id = `${n} ${reading.what} ${from} ${to}`;
        const decided = this.#decided.get(id);
        return { ...reading, quote: { from, to }, id, page, n, decided };
      }),
    );
  }

  /** What is sure and not decided about. */
  get sure() {
    return this.all.filter((one) => one.sure === 'yes' && one.text && !one.decided);
  }

  /** What was taken, as it was taken. */
  get taken() {
    return this.all
      .filter((one) => one.decided?.take && !this.refused.has(one.id))
      .map((one) => ({ ...one, text: one.decided.text ?? one.text }));
  }

  /** What has to be asked, one after the other: readings of one thing of which one holds. */
  get questions() {
    const groups = new Map();
    for (const one of this.all) {
      if (one.decided ? !this.refused.has(one.id) : one.sure === 'yes') continue;
      if (this.asksModel && (one.model || this.models.includes(one.text))) continue; // asked first
      const key = isList(one.what) ? one.id : `${one.n} ${one.what}`;
      groups.set(key, [...(groups.get(key) ?? []), one]);
    }
    return [...groups.values()];
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
    const said = (is) => this.all.find(({ what }) => what === is)?.text ?? '';
    const { make, model } = this.card ?? {};
    return `${make || said('make')} ${model || (this.asksModel ? '' : said('model'))}`.trim();
  }

  /** What the model that was chosen is called; '' where they were told apart by their years. */
  get modelName() {
    return this.all.some(({ what, text }) => what === 'model' && text === this.model)
      ? this.model
      : '';
  }

  /** The model that was chosen, for a page that is of it and of others. */
  #modelOn({ answer }) {
    return answer?.ok?.models?.includes(this.model) ? this.model : undefined;
  }

  /** Does something to what is known, works out what follows, and keeps it. */
  #then(change) {
    return this.#turn(async () => {
      this.busy = true;
      change();
      this.#keep();
      await this.#work().finally(() => (this.busy = false));
    });
  }

  /** Adds pages, each with its text. */
  add(texts) {
    return this.#then(() => {
      for (const text of texts) this.pages.push({ text, said: [] });
    });
  }

  /** Takes a page away, and what was decided about it. */
  remove = (n) =>
    this.#then(() => {
      this.pages.splice(n, 1);
      const after = [...this.#decided].flatMap(([id, decision]) => {
        const [of, ...rest] = id.split(' ');
        if (Number(of) === n) return [];
        const now = Number(of) > n ? Number(of) - 1 : of;
        return [/** @type {[string, Decision]} */ ([[now, ...rest].join(' '), decision])];
      });
      this.#decided = new Map(after);
      this.refused.clear();
    });

  takeSure = () =>
    this.#then(() => {
      for (const { id } of this.sure) this.#decided.set(id, { take: true });
    });

  /** Puts what was taken back among what was found. */
  putBack = () => this.#then(() => this.#decided.clear());

  /** Leaves readings out. */
  leave = (list) =>
    this.#then(() => {
      for (const { id } of list) this.#decided.set(id, { take: false });
    });

  /** Takes one of several, as it is or as it was typed, and leaves the others. */
  choose = (list, one, text) =>
    this.#then(() => {
      for (const { id } of list) this.#decided.set(id, { take: false });
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
    const { model, layout, names } = this;
    const decided = [...this.#decided];
    this.#drafts.put('state', { key: this.#key, pages, model, layout, names, decided });
  }

  /** Reads the pages one after the other, each beside what the card says by then. */
  async #work() {
    if (!this.known)
      // the card begins with the layout that the pages tell
      for (const page of this.pages) page.answer ??= await this.#read(page, undefined);
    let card = this.#begun();
    let asked = this.known;
    Object.assign(this, { gaps: [], found: [] });
    this.refused.clear();
    for (const [n, page] of this.pages.entries()) {
      page.answer = await this.#read(page, asked ? card : undefined);
      asked = true;
      card = await this.#take(card, page, n);
    }
    const { make, model } = this.names;
    card.make ||= make ?? '';
    card.model ||= model ?? '';
    this.card = card;
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
    const own = this.all.filter((one) => one.n === n && one.decided?.take);
    if (!own.length) return card;
    const readings = own.map(({ what, text, quote, model, decided }) => ({
      what,
      text: decided.text ?? text,
      quote,
      model,
      over: decided.chosen,
    }));
    const { make, model } = Object.fromEntries(own.map((one) => [one.what, one.text]));
    const name = [make ?? card.make, model ?? card.model].filter(Boolean).join(' ');
    const title = t(name ? 'manual.title-of' : 'manual.title-none', { name });
    const input = JSON.stringify({
      card,
      readings,
      text: page.text,
      title: card.sources?.[0]?.title || title,
      page: page.number ?? page.answer.ok.page,
      model: this.#modelOn(page),
    });
    if (page.handed !== input) {
      page.handed = input;
      page.taken = await call('take-readings', input);
    }
    const { ok, findings = [] } = page.taken;
    for (const { where = '', ...found } of ok?.findings ?? findings) {
      const [, list, at] = where.split('/');
      const one = list === 'readings' ? own[Number(at)] : undefined;
      if (!one) this.found.push({ where, ...found });
      else if (!ok?.at[Number(at)])
        this.refused.set(one.id, [...(this.refused.get(one.id) ?? []), found]);
    }
    this.gaps = ok?.gaps ?? this.gaps;
    return ok?.card ?? card;
  }
}
