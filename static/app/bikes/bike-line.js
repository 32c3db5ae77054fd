import { html, nothing } from 'lit-html';
import { short } from '../ui/lists.js';
import { t, text } from '../words/catalogue.js';
import { when } from '../words/dates.js';

/** What a list shows of a bike; leads to `href`. */
export const bikeLine = (row, href) => html`<a href=${href}>${bikeFacts(row)}</a>`;

/**
 * The same, without leading anywhere.
 *
 * @param {{ bike: any, twin?: boolean, changed?: string }} row
 */
export function bikeFacts({ bike, twin, changed }) {
  const { name, years, layout, invented, oils = [], gaps, unfinished } = bike;
  const [oil] = oils;
  const missing = gaps
    ? html`<span class="gaps">? ${t('bikes.gaps', { count: gaps })}</span>`
    : nothing;
  return html`<span class="who">
      <strong>${short(name) || t('bikes.unnamed')}</strong>
      <span>${text(years)} ${t(layout)}</span>
      ${twin ? html`<span>${t('bikes.version', { date: when(changed ?? '') })}</span>` : nothing}
      ${invented ? html`<span>${t('example')}</span>` : nothing} ${missing}
      ${unfinished ? html`<span class="gaps">${t('bikes.unfinished')}</span>` : nothing}
    </span>
    <span class="oil">
      ${due(oil?.due?.texts?.[0])}
      <span>${oil?.grades ? t('grade.sae', { grade: oil.grades[0] }) : nothing}</span>
    </span>`;
}

const due = (volume) =>
  volume
    ? html`<span class="value">${text(volume)}</span>`
    : html`<span class="unknown">${t('not-known')}</span>`;
