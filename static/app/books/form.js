import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { draftsWritten } from '../store/drafts.js';
import { draftMark } from '../ui/draft-mark.js';
import { control } from '../ui/field.js';
import { said, tied } from '../ui/said.js';
import { own } from '../site/own.js';
import { hasWord, t } from '../words/catalogue.js';
import { today } from '../words/dates.js';

/** @import { Told } from './book.js' */

/**
 * A field of a form: what is told already in it, and for a choice among which words.
 *
 * @typedef {object} Asked
 * @property {string} name
 * @property {string} word of its label; an example of what to type is `word.hint`
 * @property {string} [told]
 * @property {'text' | 'choice' | 'day'} [kind]
 * @property {string[]} [words]
 * @property {string} [family]
 * @property {Map<string, [string, string?]>} [names]
 * @property {boolean} [lines]
 * @property {() => void} [chosen] called once something else is chosen
 */

/** What is typed for an entry of a book, until it is written there. */
export class Form {
  /**
   * @param {import('./book.js').Book} book
   * @param {string} about by which the form is known in its book
   * @param {Asked[]} fields
   */
  constructor(book, about, fields) {
    this.book = book;
    this.about = about;
    this.fields = fields;
  }

  #key = (name) => `${this.about} ${name}`;

  /** What stands in a field. */
  value(name) {
    const field = this.fields.find((each) => each.name === name);
    return String(this.book.drafts.get(this.#key(name)) ?? field?.told ?? '');
  }

  /** Whether something is typed here that is not written yet, or was refused. */
  get begun() {
    return (
      this.fields.some(({ name }) => this.book.drafts.get(this.#key(name)) !== undefined) ||
      Boolean(this.book.found.get(this.about)?.length)
    );
  }

  /** The values of those fields. */
  values(...names) {
    return Object.fromEntries(
      names.map((name) => [name, this.value(name).trim()]).filter(([, value]) => value),
    );
  }

  /**
   * Writes it into the book, of that subject.
   *
   * @param {string} of
   * @param {Told} told
   * @param {{ photo?: any, say?: string }} [how]
   */
  async keep(of, told, how = {}) {
    const { drafts } = this.book;
    const keys = this.fields.map(({ name }) => drafts.key(this.#key(name)));
    return this.book.tell(this.about, of, told, { ...how, drafts: keys });
  }

  /** What was found that belongs to none of the fields. */
  #rest() {
    const found = this.book.found.get(this.about) ?? [];
    return found.filter(({ where }) => !this.fields.some(({ name }) => about(where) === name));
  }

  /**
   * @param {string} word of the button
   * @param {() => unknown} keep
   * @param {unknown} [more] what stands above the button
   */
  draw(word, keep, more = nothing) {
    const submit = (event) => {
      event.preventDefault();
      keep();
    };
    const begun = this.fields.some(
      ({ name }) => this.book.drafts.get(this.#key(name)) !== undefined,
    );
    const standing = !begun ? '' : draftsWritten() ? 'written' : 'pending';
    return html`<form @submit=${submit}>
      ${this.fields.map((field) => this.#field(field))} ${more} ${said('', this.#rest())}
      ${draftMark(standing)}
      <p class="entry"><button type="submit">${t(word)}</button></p>
    </form>`;
  }

  #field(field) {
    const { name, word, kind = 'text', words, family, names, lines } = field;
    const id = `book-${this.about}-${name}`.replaceAll(/[^\w-]/g, '-');
    const all = this.book.found.get(this.about) ?? [];
    const found = all.filter(({ where }) => about(where) === name);
    const type = (text) => {
      const { drafts, app } = this.book;
      const begun = drafts.get(this.#key(name)) !== undefined;
      drafts.put(this.#key(name), text);
      if (!begun) app.redraw();
    };
    const set = (text) => {
      type(text);
      field.chosen?.();
      this.book.app.redraw();
    };
    const hint = hasWord(`${word}.hint`)
      ? html`<small>${t('bench.like', { example: t(`${word}.hint`) })}</small>`
      : nothing;
    const letters = lines ? limits.remark : limits.value;
    const is = { id, value: this.value(name), label: t(word), hint, names, found, type, set };
    return html`<div class="field">
      ${kind === 'day' ? day(name, is) : control({ name, kind, words, family, letters, lines }, is)}
      ${said(id, found)}
    </div>`;
  }
}

/** The member of a fact that a finding is about. */
const about = (where) => where.split('/').at(-1);

const day = (name, { id, value, label, found, set }) =>
  html`<label for=${id}>${label}</label>
    <input
      id=${id}
      name=${name}
      ${tied(id, found)}
      type="date"
      max=${today()}
      .value=${value}
      @change=${({ target }) => set(target.value)}
    />`;

/**
 * A part of a screen that is folded in until it is wanted.
 *
 * @param {string} title
 * @param {unknown} content
 * @param {boolean} open
 */
export const folded = (title, content, open = false) =>
  html`<details class="more" ?open=${open}>
    <summary>${title}</summary>
    ${content}
  </details>`;

/** A member of an answer that may be named by anybody. */
export const named = (table, name) => own(table, name) ?? '';

/**
 * The form for a new subject of a book: it stands open as long as the book has none.
 *
 * @param {string} word
 * @param {{ form: Form, keep: () => unknown }} fresh
 * @param {unknown[]} here
 */
export const fresh = (word, { form, keep }, here) => {
  const drawn = form.draw('books.keep', keep);
  return here.length
    ? folded(t(word), drawn, form.begun)
    : html`<section>
        <h2>${t(word)}</h2>
        ${drawn}
      </section>`;
};
