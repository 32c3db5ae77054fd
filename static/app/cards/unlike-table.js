import { html } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { short } from '../ui/lists.js';

/** Where two cards, or two records with one, differ: a table that opens. */
export const unlikeTable = (list) =>
  html`<details>
    <summary>${t('cards.unlike', { count: list.length })}</summary>
    <dl>
      ${list.map(
        ({ where, values }) =>
          html`<div class="figure">
            <dt>${where.map(short).join(' › ')}</dt>
            ${values.map((value) => html`<dd>${value === undefined ? t('not-known') : text(short(String(value)))}</dd>`)}
          </div>`,
      )}
    </dl>
  </details>`;
