import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';

const longest = 120; // letters of a name in a list

/** A name from a card, short enough for a list. */
export const short = (name) => {
  const plain = text(name);
  return plain.length > longest ? `${plain.slice(0, longest)}…` : plain;
};

/** The field in which one searches; `find` is called with what stands there at each keystroke. */
export const finder = (typed, find, word = 'bikes.search') =>
  html`<div class="ask">
    <label for="find">${t(word)}</label>
    <input
      id="find"
      type="search"
      autocomplete="off"
      autocapitalize="none"
      spellcheck="false"
      enterkeyhint="search"
      .value=${typed}
      @input=${({ target }) => find(target.value)}
    />
  </div>`;

/** The button that draws further lines, if there are any. */
export const more = (left, further) =>
  left > 0
    ? html`<p>
        <button type="button" class="quiet" @click=${further}>
          ${t('bikes.more', { count: left })}
        </button>
      </p>`
    : nothing;
