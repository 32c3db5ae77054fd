import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';

/**
 * A section of a screen under its heading; nothing when there is nothing in it.
 *
 * @param {string} word
 * @param {unknown} content
 * @param {[filled?: unknown]} more falsy when there is nothing in it; what is missing is falsy too
 */
export const section = (word, content, ...more) =>
  more.every(Boolean)
    ? html`<section>
        <h2>${t(word)}</h2>
        ${content}
      </section>`
    : nothing;

/**
 * What is read when it is asked for, under its heading with how much there is; nothing when
 * there is nothing.
 *
 * @param {string} word
 * @param {number} count
 * @param {unknown} content
 */
export const fold = (word, count, content) =>
  count
    ? html`<details class="fold">
        <summary>
          <h2>${t(word)}</h2>
          <span class="count">${count}</span>
        </summary>
        ${content}
      </details>`
    : nothing;
