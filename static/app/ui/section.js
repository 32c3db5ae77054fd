import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';

/**
 * A section of a screen under its heading; nothing when there is nothing in it.
 *
 * @param {string} word
 * @param {unknown} content
 * @param {unknown} filled falsy when there is nothing in it
 */
export const section = (word, content, filled = true) =>
  filled
    ? html`<section>
        <h2>${t(word)}</h2>
        ${content}
      </section>`
    : nothing;
