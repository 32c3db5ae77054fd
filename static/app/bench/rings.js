import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { figureRow } from '../ui/figure.js';

/** The sizes that a ring may be, the likeliest first, with how each would lie in its groove. */
export const rings = (list) =>
  list.map(
    ({ id, series, verdict, texts, figures }) =>
      html`<article class="sheet">
        <h3>${text(id)}</h3>
        <p class="big">
          <span class="value">${text(texts[0])}</span> <span class="other">${text(texts[1])}</span>
        </p>
        <p>${t(series)} · ${t(verdict)}</p>
        ${figures ? html`<dl>${figures.map(figureRow)}</dl>` : nothing}
      </article>`,
  );
