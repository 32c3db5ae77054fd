import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { draftsWritten } from '../store/drafts.js';
import { control } from '../ui/field.js';
import { draftMark } from '../ui/draft-mark.js';
import { said } from '../ui/said.js';
import { t } from '../words/catalogue.js';

/** The fields in which one tells something of a bike, with what is typed and not told yet. */
export class Entries {
  telling;
  #app;
  /** @type {Set<string>} what was typed before the page was left */
  #restored;

  constructor(telling, app) {
    this.telling = telling;
    this.#app = app;
    this.#restored = new Set(telling.drafts.all().map(([name]) => name));
  }

  /** What stands in a field: what is typed there, else what is told. */
  value(name, told = '') {
    return this.telling.drafts.get(name) ?? told;
  }

  type(name, text) {
    const before = this.#standing(name);
    this.telling.drafts.put(name, text);
    if (before !== this.#standing(name)) this.#app.redraw();
  }

  drop(name) {
    this.telling.drafts.drop(name);
    this.telling.found.delete(name);
    this.#restored.delete(name);
    this.#app.redraw();
  }

  /** @returns {import('../ui/draft-mark.js').Standing} */
  #standing(name) {
    // What is under the fingers is not marked: nothing may move where one taps next.
    const left = this.#restored.has(name) || this.#refused(name);
    if (!left || this.telling.drafts.get(name) === undefined) return '';
    return draftsWritten() ? 'written' : 'pending';
  }

  #refused(name) {
    return this.telling.found.get(name)?.some(({ grade }) => grade === 'refuse') ?? false;
  }

  /**
   * A field whose text is told as soon as it is entered.
   *
   * @param {string} name
   * @param {string} word of its label
   * @param {string} told what is told already
   * @param {(text: string) => { kind: string, what?: string, value: string }} fact
   */
  told(name, word, told, fact) {
    const { drafts } = this.telling;
    const enter = async (text) => {
      if (text.trim() === told) return this.drop(name);
      drafts.put(name, text);
      await this.telling.tell(name, fact(text.trim()), { drafts: [drafts.key(name)] });
      this.#restored.delete(name);
      this.#app.redraw();
    };
    return this.field(name, word, { told, set: enter });
  }

  /**
   * A field; `set` is called with what is entered in it, if with anything.
   *
   * @param {string} name
   * @param {string} word
   * @param {{ told?: string, set?: (text: string) => void, letters?: number, hint?: string, choice?: any }} how
   */
  field(name, word, { told = '', set, letters = limits.value, hint, choice } = {}) {
    const { drafts, found } = this.telling;
    const typed = drafts.get(name);
    const enter = () => set?.(String(typed));
    const drop = () => this.drop(name);
    const taps = html`<span class="entry">
      ${set ? html`<button type="button" class="quiet" @click=${enter}>${t('draft.enter')}</button>` : nothing}
      <button type="button" class="quiet" @click=${drop}>${t('draft.drop')}</button>
    </span>`;
    return html`<div class="field">
      ${control(
        { name, kind: choice ? 'choice' : 'text', letters, ...choice },
        {
          id: `details-${name}`,
          found: found.get(name),
          value: typed ?? told,
          label: t(word),
          names: choice?.names,
          none: 'details.choose',
          hint: hint ? html`<small>${t(hint)}</small>` : nothing,
          type: (text) => this.type(name, text),
          set: (text) => (set ? set(text) : this.choose(name, text)),
        },
      )}
      ${draftMark(this.#standing(name), taps)} ${said(`details-${name}`, found.get(name))}
    </div>`;
  }

  /** Notes what was chosen, or typed to the end, and is told with something else. */
  choose(name, text) {
    this.type(name, text);
    this.#app.redraw();
  }
}
