import { call } from '../core/client.js';
import { cardOf } from '../store/card-of.js';
import { file } from '../site/data.js';
import { settings } from '../store/settings.js';
import * as store from '../store/store.js';
import { addPart, blankCard, removePart } from './parts.js';
import { at, put } from './pointer.js';
import { draftRecord } from '../cards/record.js';
import { isFigure, isRead, sectionsOf } from './sections.js';
import { own } from '../site/own.js';

/** @import { Card } from '../core/core.d.ts' */

/** A card being written: kept after each entry, and half-done as it may be. */
export class Draft {
  card;
  found = []; // findings about the card, with pointers into it
  unread = new Map(); // pointer -> {text, findings}: typed, and not to be read
  typed = new Map(); // pointer -> text: under the fingers, and not entered yet
  busy = 0; // entries that are being taken in
  #key;
  #table;
  #record;

  /** Opens the card of that key; undefined when there is none. */
  static async open(key) {
    const record = await store.card(key);
    return record ? Draft.#make(key, record.card, record) : undefined;
  }

  /** Begins a card: of a layout with a filter of that kind, if any. */
  static async blank(layout, filter) {
    const key = crypto.randomUUID();
    const table = await file('entries.json');
    const draft = await Draft.#make(key, blankCard(layout, filter, table, `own-${key}`));
    await draft.#save();
    return draft;
  }

  /** Begins a card as a copy of another. */
  static async copy(from) {
    const key = crypto.randomUUID();
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

  /** Writes an entry. What can't be read stays beside it and leaves the card as it was. */
  async write(entry, text, more = {}) {
    this.busy++;
    try {
      await this.#take(entry, text, more);
    } finally {
      this.busy--;
    }
  }

  async #take(entry, text, more) {
    this.unread.delete(entry.at);
    if (text.trim() && isRead(entry)) {
      const { ok, findings } = await this.#read(entry, text);
      if (!ok) {
        this.unread.set(entry.at, { text, findings });
        return;
      }
      const { notes: _, words, ...value } = ok;
      const figure = isFigure(entry) ? { ...value, ...this.#stated(more) } : value.value;
      put(this.card, entry.at, words ?? figure);
    } else this.#put(entry, text.trim());
    if (entry.stated) this.#state(entry, more);
    await this.#save();
  }

  /** Says where a statement of the manual comes from that is no figure, such as the grades. */
  #state(entry, more) {
    const { page, method, standing, source } = this.#stated(more);
    Object.assign(at(this.card, above(entry)) ?? {}, { page, method, standing, source });
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
    put(this.card, value === undefined && entry.clears ? above(entry) : entry.at, value);
  }

  async add(part) {
    addPart(this.card, this.#table, part);
    await this.#save();
  }

  async remove(pointer) {
    removePart(this.card, pointer);
    await this.#save();
  }

  async #check() {
    const { ok, findings = [] } = await call('check-card', { card: this.card });
    this.found = (ok?.findings ?? findings).map((f) => ({
      ...f,
      where: f.where.replace(/^\/card/, ''),
    }));
  }

  async #save() {
    this.card = JSON.parse(JSON.stringify(this.card)); // without what is undefined
    await this.#check();
    this.#record = await draftRecord(this.#key, this.card, this.#record);
    await store.putCard(this.#record);
  }
}

/** "/bolts/0/seal" of "/bolts/0/seal/kind". */
const above = ({ at: pointer }) => pointer.slice(0, pointer.lastIndexOf('/'));
