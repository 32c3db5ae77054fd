import { html, nothing } from 'lit-html';
import { short } from '../ui/lists.js';
import { t, text } from '../words/catalogue.js';

/** The place of a layout's sign, which comes a moment after the list. */
export const place = html`<span class="outline"></span>`;

/**
 * A line of a list of bikes: the sign of its layout, its name, what there is to say of it in
 * a line, how much oil of which grade. A volume that is null is told elsewhere.
 *
 * @param {{ sign?: unknown, name: unknown, about: unknown[], volume?: string | null, grade?: string }} line
 */
export const bikeRow = ({ sign = nothing, name, about, volume, grade }) =>
  html`${sign}<span class="who"
      ><strong>${name}</strong> <span>${about.filter(Boolean).join(' · ')}</span></span
    >
    <span class="oil"
      >${
        volume
          ? html`<span class="value">${text(volume)}</span>`
          : volume === null
            ? nothing
            : html`<span class="unknown">${t('not-known')}</span>`
      }
      ${grade ? html`<span>${text(grade)}</span>` : nothing}</span
    >`;

/**
 * What a list shows of a bike: what is still to be known of it, else what tells it apart.
 *
 * @param {{ bike: any }} row
 * @param {{ sign?: unknown, due?: unknown, own?: unknown[], example?: boolean }} [beside] own: see ownFacts
 */
export function bikeFacts({ bike }, { sign, due, own = [], example = true } = {}) {
  const { name, years, layout, invented, oils = [], gaps, unfinished } = bike;
  const [oil] = oils;
  return bikeRow({
    sign,
    name: short(name) || t('bikes.unnamed'),
    about: [
      due || (years && text(years)),
      ...own,
      !unfinished && !due && (gaps ? `? ${t('bikes.gaps', { count: gaps })}` : t(apart(layout))),
      invented && example && t('example'),
    ],
    volume: oil?.due?.texts?.[0],
    grade: oil?.grades?.[0],
  });
}

/** The word for what tells a layout from others, in a few letters. */
const apart = (layout = '') => layout.replace('layout.', 'apart.');
