import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { figureRow } from '../ui/figure.js';
import { scale } from '../ui/picture/scale.js';

/** The wrenches at hand, the one to take first said so. */
export function wrenches({ wrenches: list, take }) {
  return html`
    ${take ? nothing : html`<p class="verdict">${t('bench.no-wrench')}</p>`}
    ${list.map(
      (w) =>
        html`<article class="sheet">
          <h3>
            ${text(w.id)}${w.id === take ? html` · <strong>${t('bench.take')}</strong>` : nothing}
          </h3>
          <p class="big">
            ${w.setting ? html`<span class="value">${text(w.setting)}</span> ` : nothing}${t(w.verdict)}
          </p>
          ${scale(w)} ${w.gets ? html`<dl>${w.gets.map(figureRow)}</dl>` : nothing}
          ${w.beside ? beside(w.beside) : nothing}
        </article>`,
    )}
  `;
}

/** The marks next to a torque that no mark gives, each with what comes of it. */
const beside = (marks) => html`
  <h4>${t('bench.beside')}</h4>
  ${marks.map(
    (mark) =>
      html`<p class="value">${text(mark.setting)}</p>
        <dl>${mark.gets.map(figureRow)}</dl>`,
  )}
`;
