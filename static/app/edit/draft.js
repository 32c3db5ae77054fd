import { call } from '../core/client.js';
import { cardOf } from '../store/card-of.js';
import { file } from '../site/data.js';
import { Drafts, draftsWritten } from '../store/drafts.js';
import { settings } from '../store/settings.js';
import * as store from '../store/store.js';
import { addPart, blankCard, removePart } from './parts.js';
import { above, at, put } from './pointer.js';
import { draftRecord } from '../cards/record.js';
import { isFigure, isRead, isWords, sectionsOf, textOf } from './sections.js';
import { own } from '../site/own.js';
import { inTurn } from '../site/in-turn.js';
import { newId } from '../site/new-id.js';

/** @import { Card, PlateFigure, QuotedAt } from '../core/core.d.ts' */

/** A card being written: kept after each entry, and half-done as it may be. */
export class Draft {
  card;
  found = []; // findings about the card, with pointers into it
  /** @type {QuotedAt[]} what comes from the words of the manual, with pointers into the card */
  quotes = [];
  /** @type {PlateFigure[]} what the plate of its plan shows by now */
  plate = [];
  /** @type {string[]} pointers of what a plan needs most */
  first = [];
  /** @type {Map<string, { text: string, notes: any[] }>} what was typed and taken in, as it was typed */
  echo = new Map();
  unread = new Map(); // pointer -> {text, findings}: typed, and not to be read
  typed = new Map(); // pointer -> text: under the fingers, and not entered yet
  entering = new Set(); // pointers of what is being taken in
  unfolded = new Set(); // the folds of the form that are open
  busy = 0; // what is being taken in
  /** @type {Map<string, { [member: string]: string | undefined }>} what is said of figures that are not read yet, by pointer */
  #aside = new Map();
  #removing = false; // a second tap would meet the part that stands there next
  /** Each takes in what the card says when the one before it is done, and not when it was tapped. */
  #turn = inTurn();
  #key;
  #table;
  #record;
  #settled = ''; // the pointer of what was asked first, and is known by now
  #restored = new Set(); // pointers of what was typed before the page was left
  /** @type {Drafts} what is typed and not in the card: by pointer */
  #drafts;

  /** Opens the card of that key; undefined when there is none. */
  static async open(key) {
    const record = await store.card(key);
    return record ? Draft.#make(key, record.card, record) : undefined;
  }

  /** Begins a card: of a layout with a filter of that kind, if any. */
  static async blank(layout, filter) {
    const key = newId();
    const table = await file('entries.json');
    const draft = await Draft.#make(key, blankCard(layout, filter, table, `own-${key}`));
    await draft.#save();
    return draft;
  }

  /** Begins a card as a copy of another. */
  static async copy(from) {
    const key = newId();
    const { invented: _, ...card } = structuredClone(/** @type {Card} */ (await cardOf(from)));
    const draft = await Draft.#make(key, { ...card, id: `own-${key}` });
    await draft.#save();
    return draft;
  }

  static async #make(key, card, record) {
    const draft = new Draft();
    draft.#key = key;
    draft.#table = await file('entries.json');
    draft.#record = record;
    draft.card = structuredClone(card);
    draft.#drafts = await Drafts.open(`card ${key}`);
    for (const [pointer, text] of draft.#drafts.all()) {
      draft.typed.set(pointer, String(text));
      draft.#restored.add(pointer);
    }
    await draft.#check();
    return draft;
  }

  get key() {
    return this.#key;
  }

  get sections() {
    return sectionsOf(this.card, this.#table);
  }

  get parts() {
    return this.#table.parts.map(({ word }) => word);
  }

  /** Notes what is typed at a pointer, at each letter. */
  type(pointer, text) {
    this.typed.set(pointer, text);
    this.#drafts.put(pointer, text);
  }

  /**
   * Takes a text that was typed in by write(), which resolves to whether it could; what it
   * can't take in stays written down.
   *
   * @param {string} pointer
   * @param {any} text
   * @param {(text: any) => Promise<boolean>} write
   */
  async enter(pointer, text, write) {
    this.type(pointer, text);
    this.entering.add(pointer);
    const taken = await write(text).finally(() => this.entering.delete(pointer));
    if (this.typed.get(pointer) !== text) return; // something else was typed meanwhile
    this.typed.delete(pointer);
    this.#restored.delete(pointer);
    if (taken) this.#drafts.drop(pointer);
  }

  /** Forgets what was typed at a pointer and is not in the card. */
  forget(pointer) {
    this.typed.delete(pointer);
    this.unread.delete(pointer);
    this.echo.delete(pointer);
    this.#drafts.drop(pointer);
  }

  /**
   * What is said of an entry beside it.
   *
   * @returns {import('../ui/draft-mark.js').Standing}
   */
  standing(pointer) {
    // What is under the fingers is not marked: nothing may move where one taps next.
    const left = this.#restored.has(pointer) || this.unread.has(pointer);
    if (!left || this.entering.has(pointer)) return '';
    if (this.#drafts.get(pointer) === undefined) return '';
    return draftsWritten() ? 'written' : 'pending';
  }

  /** Whether something is typed, at the places that are asked for, that is not in the card. */
  open(asked) {
    return this.#drafts.all().some(([pointer]) => asked(pointer));
  }

  /**
   * Does something to the card once what was begun before is done.
   *
   * @template T
   * @param {() => Promise<T>} act
   * @returns {Promise<T>}
   */
  async #inTurn(act) {
    this.busy++;
    try {
      return await this.#turn(act);
    } finally {
      this.busy--;
    }
  }

  /** Writes an entry. What can't be read stays beside it and leaves the card as it was. */
  write = (entry, text) => this.#inTurn(() => this.#take(entry, text));

  async #take(entry, text) {
    if (text !== textOf(this.card, entry)) this.echo.delete(entry.at);
    this.unread.delete(entry.at);
    const origin = this.originOf(entry);
    if (text.trim() && isRead(entry)) {
      const { ok, findings } = await this.#read(entry, text);
      if (!ok) {
        this.unread.set(entry.at, { text, findings });
        return false;
      }
      const { notes = [], words, ...value } = ok;
      this.echo.set(entry.at, { text, notes });
      const figure = isFigure(entry) ? { ...value, ...this.#stated(origin) } : value.value;
      put(this.card, entry.at, words ? listed(entry, words) : figure);
    } else if (!entry.settles) this.#put(entry, text.trim());
    else if (!(await this.#settle(entry, text))) return false;
    this.#takeAside(entry, origin);
    await this.#save();
    return true;
  }

  /** Says of what kind a filter is, from which it follows what closes it. */
  async #settle(entry, text) {
    const { id } = at(this.card, above(entry.at));
    const kind = text || 'unknown';
    const { ok, findings } = await call('filter-kind', { card: this.card, filter: id, kind });
    if (!ok) {
      this.unread.set(entry.at, { text, findings });
      return false;
    }
    this.card = ok.card;
    this.#settled = entry.at;
    return true;
  }

  /** What is said of a figure: its page, how it stands, and why. */
  originOf(entry) {
    return { ...pick(this.#figure(entry)), ...this.#aside.get(entry.at) };
  }

  /** A figure of the card, or the statement of which an entry is. */
  #figure = (entry) => at(this.card, entry.stated ? above(entry.at) : entry.at);

  /**
   * Says where a figure comes from. What is said of one that can't be read waits for it.
   *
   * @param {any} entry
   * @param {{ [member: string]: string | undefined }} said
   */
  say(entry, said) {
    return this.#inTurn(async () => {
      this.#aside.set(entry.at, { ...this.#aside.get(entry.at), ...said });
      if (this.unread.has(entry.at) || !textOf(this.card, entry)) return false;
      this.#takeAside(entry, this.originOf(entry));
      await this.#save();
      return true;
    });
  }

  /** Writes what is said of a figure into the card. */
  #takeAside(entry, origin) {
    for (const member of Object.keys(this.#aside.get(entry.at) ?? {}))
      if (this.typed.get(`${entry.at}/${member}`) === undefined)
        this.#drafts.drop(`${entry.at}/${member}`);
    this.#aside.delete(entry.at);
    if (isFigure(entry) || entry.stated)
      Object.assign(this.#figure(entry) ?? {}, this.#stated(origin));
  }

  #read({ kind, unit }, text) {
    return call('read-entry', { kind, text, unit, system: settings.system });
  }

  /** The standing of what is written in: from the manual unless it is said otherwise. */
  #stated({ standing = 'manual', page, method, kept }) {
    const source = standing === 'manual' ? this.card.sources?.[0]?.id : undefined;
    return { standing, source, page, method, kept };
  }

  #put(entry, text) {
    const values = {
      lines: () => text.split('\n').filter((line) => line.trim()),
      yes: () => true,
    };
    const value = text ? (own(values, entry.kind)?.() ?? text) : undefined;
    put(this.card, value === undefined && entry.clears ? above(entry.at) : entry.at, value);
  }

  add = (part) =>
    this.#inTurn(async () => {
      const before = new Set(this.sections.map(({ at: place }) => place));
      this.#settled = ''; // it stands at a place that may be another's now
      addPart(this.card, this.#table, part);
      for (const { at: place } of this.sections)
        if (place && !before.has(place)) this.unfolded.add(place); // it is written into next
      await this.#save();
    });

  async remove(pointer) {
    if (this.#removing) return;
    this.#removing = true;
    try {
      await this.#inTurn(() => this.#remove(pointer));
    } finally {
      this.#removing = false;
    }
  }

  async #remove(pointer) {
    const before = placesOf(this.card);
    this.#settled = '';
    this.echo.clear(); // it stands at places that are others now
    removePart(this.card, pointer);
    const after = placesOf(this.card);
    for (const [part, place] of before) this.#move(place, after.get(part));
    await this.#save();
  }

  /** What is typed at a part goes with it to its new place, or away. */
  #move(from, to) {
    if (from === to) return;
    for (const pointer of this.#drafts.all().map(([name]) => name)) {
      if (!pointer.startsWith(`${from}/`)) continue;
      const [text, unread] = [this.#drafts.get(pointer), this.unread.get(pointer)];
      this.forget(pointer);
      if (!to) continue;
      const moved = to + pointer.slice(from.length);
      this.#restored.add(moved);
      if (unread) this.unread.set(moved, unread);
      else this.typed.set(moved, text);
      this.#drafts.put(moved, text);
    }
  }

  async #check() {
    const { card } = this;
    const [{ ok, findings = [] }, first, plan] = await Promise.all([
      call('check-card', { card }),
      call('first-entries', { card }),
      call('plan', { card: named(card), bench: { system: settings.system } }),
    ]);
    this.plate = plan.ok?.plate ?? [];
    this.first = this.#steady(first.ok?.places ?? this.first);
    this.quotes = ok?.quotes ?? [];
    this.found = (ok?.findings ?? findings).map((f) => ({
      ...f,
      where: f.where.replace(/^\/card/, ''),
    }));
  }

  /** What is asked first, with what stood among it until it was answered: it stays where it is. */
  #steady(places) {
    const was = this.first.indexOf(this.#settled);
    if (was < 0 || places.includes(this.#settled)) return places;
    return [...places.slice(0, was), this.#settled, ...places.slice(was)];
  }

  async #save() {
    this.card = JSON.parse(JSON.stringify(this.card)); // without what is undefined
    await this.#check();
    this.#record = await draftRecord(this.#key, this.card, this.#record);
    await store.putCard(this.#record);
  }
}

/** @param {any} figure */
const pick = ({ standing = 'manual', page, method, kept } = {}) => ({
  standing,
  page,
  method,
  kept,
});

/** A card as if it were called something: its figures may be seen before its name is known. */
const named = (card) => ({
  ...card,
  make: card.make || '–',
  model: card.model || '–',
  sources: card.sources?.map((source) => ({ ...source, title: source.title || '–' })),
});

/** Words as a card holds them at an entry: a list, or one text. */
const listed = (entry, words) => (isWords(entry) ? words : words.join('/'));

/** Where each part stands: part -> pointer, in the order of their places. */
function placesOf(card) {
  const lists = Object.entries(card).filter(([, list]) => Array.isArray(list));
  return new Map(
    lists.flatMap(([name, list]) =>
      list
        .map((part, n) => /** @type {const} */ ([part, `/${name}/${n}`]))
        .filter(([part]) => typeof part === 'object'),
    ),
  );
}
