import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { figureRow } from '../ui/figure.js';

/** The sizes that a ring may be, the likeliest first, with how each would lie in its groove. */
export const rings = (list) =>
  html`<ol class="pours">
    ${list.map(
      ({ id, series, verdict, texts, figures }) =>
        html`<li>
          <strong>${text(id)}</strong> · <span class="value">${text(texts[0])}</span>
          <span class="other">${text(texts[1])}</span>
          <p>${t(series)} · ${t(verdict)}</p>
          ${figures ? html`<dl>${figures.map(figureRow)}</dl>` : nothing}
        </li>`,
    )}
  </ol>`;
