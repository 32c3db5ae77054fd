import { html, nothing } from 'lit-html';
import { t } from '../words.js';

/** A part of a screen under its heading; nothing when there is nothing in it. */
export const part = (word, content, filled = true) =>
  filled
    ? html`<section>
        <h2>${t(word)}</h2>
        ${content}
      </section>`
    : nothing;
