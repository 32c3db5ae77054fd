import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';
import { control } from './field.js';
import { hint, label, named } from './labels.js';
import { said } from './said.js';
import { own, setOwn } from '../site/own.js';

/** @import { Field, Finding } from '../core/core.d.ts' */

/** The fields of a calculation, as the core describes them, and what is typed in them. */
export class Fields {
  /** @type {{ [name: string]: any }} by field: a text, true, or the rows of a list */
  values;
  #form;
  #changed;
  #typed;
  /** @type {Set<string>} the lists that are unfolded */
  #opened = new Set();

  /**
   * @param {{ op: string, fields: Field[] }} form
   * @param {{ [name: string]: any }} values
   * @param {() => void} changed called when something was entered
   * @param {() => void} [typed] called at each letter
   */
  constructor(form, values, changed, typed = () => {}) {
    this.#form = form;
    this.values = structuredClone(values);
    this.#changed = changed;
    this.#typed = typed;
  }

  /** Reports whether all that is needed is there. */
  complete() {
    return this.#form.fields.every((f) => !f.needed || full(own(this.values, f.name)));
  }

  empty() {
    return !Object.values(this.values).some(full);
  }

  clear() {
    this.values = {};
    this.#changed();
  }

  /** Reports whether a field is asked for, as things stand. */
  #asked = (/** @type {Field} */ { on, when }) => !on || when?.includes(own(this.values, on));

  /** Reports whether the field of that name is asked for. */
  asks = (/** @type {string} */ name) =>
    this.#form.fields.some((f) => f.name === name && this.#asked(f));

  /** What is given to the fields that are asked for. */
  given() {
    return Object.fromEntries(Object.entries(this.values).filter(([name]) => this.asks(name)));
  }

  /**
   * The field that a finding is about, drawn beside it; undefined for another.
   *
   * @param {Finding} finding
   */
  place({ where }) {
    const [, name] = where.split('/');
    return this.#form.fields.find((f) => f.name === name);
  }

  /** @param {Finding[]} found */
  draw(found) {
    const fields = this.#form.fields.filter(this.#asked);
    const front = fields.filter((f) => f.needed || f.front);
    const more = fields.filter((f) => !front.includes(f));
    const open = more.some(
      (f) => full(own(this.values, f.name)) || found.some((x) => this.place(x) === f),
    );
    return html`
      ${front.map((f) => this.#one(f, this.values, '', found))}
      ${
        more.length
          ? html`<details class="more" ?open=${open}>
              <summary>${t('bench.more')}</summary>
              ${more.map((f) => this.#one(f, this.values, '', found))}
            </details>`
          : nothing
      }
    `;
  }

  /**
   * @param {Field} field
   * @param {{ [name: string]: any }} values
   * @param {string} at
   * @param {Finding[]} found
   * @returns {unknown}
   */
  #one(field, values, at, found) {
    const where = `${at}/${field.name}`;
    const about = found.filter((f) => f.where === where);
    if (field.kind === 'list') return this.#list(field, values, where, found);
    return html`<div class="field">
      ${this.#control(field, values, where, about)} ${this.#said(field, where, about)}
    </div>`;
  }

  /** @type {(field: Field, where: string, about: Finding[]) => unknown} */
  #said = (field, where, about) =>
    said(
      idOf(where),
      about.map((found) => named(this.#form.op, field, found)),
    );

  /**
   * @param {Field} field
   * @param {{ [name: string]: any }} values
   * @param {string} where
   * @param {Finding[]} found
   */
  #control(field, values, where, found) {
    const set = (/** @type {unknown} */ value) => {
      if (full(value)) setOwn(values, field.name, value);
      else delete values[field.name];
    };
    return control(field, {
      id: idOf(where),
      found,
      value: own(values, field.name),
      label: label(this.#form.op, field),
      hint: hint(this.#form.op, field),
      type: (/** @type {unknown} */ value) => {
        set(value);
        this.#typed();
      },
      set: (/** @type {unknown} */ value) => {
        set(value);
        this.#changed();
      },
    });
  }

  /**
   * @param {Field} field
   * @param {{ [name: string]: any }} values
   * @param {string} where
   * @param {Finding[]} found
   * @returns {unknown}
   */
  #list(field, values, where, found) {
    /** @type {{ [name: string]: any }[]} */
    const rows = own(values, field.name) ?? (field.needed ? [{}] : []);
    const enter = () => {
      if (rows.length) setOwn(values, field.name, rows);
      else delete values[field.name];
    };
    enter();
    const add = () => {
      this.#opened.add(where);
      rows.push({});
      enter();
      this.#changed();
    };
    const remove = (/** @type {number} */ n) => {
      rows.splice(n, 1);
      enter();
      this.#changed();
    };
    const about = found.filter((f) => f.where === where);
    // Open once, it does not fold up under the fingers.
    if (about.length || !full(rows) || found.some((f) => f.where.startsWith(`${where}/`)))
      this.#opened.add(where);
    return html`<details class="rows" ?open=${this.#opened.has(where)}>
      <summary>
        ${label(this.#form.op, field)} (${rows.filter((row) => full([row])).length})
      </summary>
      ${this.#said(field, where, about)}
      ${rows.map(
        (row, n) =>
          html`<div class="row">
            ${field.rows?.map((f) => this.#one(f, row, `${where}/${n}`, found))}
            <button type="button" class="quiet" @click=${() => remove(n)}>
              ${t('bench.remove')}
            </button>
          </div>`,
      )}
      <button type="button" class="quiet" @click=${add}>${t('bench.add')}</button>
    </details>`;
  }
}

/** @param {string} where */
const idOf = (where) => `field${where.replaceAll('/', '-')}`;

const full = (/** @type {unknown} */ value) =>
  Array.isArray(value) ? value.some((row) => Object.keys(row).length) : Boolean(value);
