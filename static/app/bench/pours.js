import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';

/** What comes out of which bottle, in the order to pour; `poured`, if any, is told the shelf that stays. */
export function pours({ pours: list, shelf }, poured) {
  return html`<ol class="pours">
      ${list.map(
        ({ id, verdict, left, pourTexts, leftTexts }) =>
          html`<li>
            <span class="value">${text(pourTexts[0])}</span>
            ${pourTexts[1] ? html`<span class="other">${text(pourTexts[1])}</span>` : nothing}
            <span
              ><strong>${text(id)}</strong> · ${t(verdict)} ·
              ${left ? t('bench.stays', { value: leftTexts[0] }) : t('bench.emptied')}</span
            >
          </li>`,
      )}
    </ol>
    ${
      poured
        ? html`<p>
            <button type="button" class="quiet" @click=${() => poured(shelf)}>
              ${t('bench.poured')}
            </button>
          </p>`
        : nothing
    }`;
}
