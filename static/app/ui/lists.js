import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { shortened } from '../words/cut.js';

const longest = 120; // letters of a name in a list

/**
 * A name from a card, short enough for a list.
 *
 * @param {string | undefined} name
 */
export const short = (name) => text(shortened(name ?? '', longest));

/**
 * The field in which one searches; `find` is called with what stands there at each keystroke.
 *
 * @param {string} typed
 * @param {(text: string) => void} find
 * @param {string} [word]
 * @param {{ hint?: string, enter?: () => void }} [more] a hint stands in the field, and the label is only heard
 */
export const finder = (typed, find, word = 'bikes.search', { hint, enter } = {}) =>
  html`<div class="ask">
    <label for="find" class=${hint ? 'hidden' : nothing}>${t(word)}</label>
    <input
      id="find"
      type="search"
      placeholder=${hint ?? nothing}
      autocomplete="off"
      autocapitalize="none"
      spellcheck="false"
      enterkeyhint="search"
      .value=${typed}
      @input=${(/** @type {any} */ { target }) => find(target.value)}
      @keydown=${(/** @type {KeyboardEvent} */ { key }) => key === 'Enter' && enter?.()}
    />
  </div>`;

/**
 * The button that draws further lines, if there are any.
 *
 * @param {number} left
 * @param {() => void} further
 */
export const more = (left, further) =>
  left > 0
    ? html`<p>
        <button type="button" class="quiet" @click=${further}>
          ${t('bikes.more', { count: left })}
        </button>
      </p>`
    : nothing;
