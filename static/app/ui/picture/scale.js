import { html, nothing, svg } from 'lit-html';
import { t } from '../../words/catalogue.js';

const width = 340;
const edge = 12;

/**
 * The scale of a torque wrench: hatched where it must not be used, with the mark
 * to set. What it shows is said in words beside it.
 */
export function scale({ unit, low = 0, fifth, high, mark, setting }) {
  const at = (v) => edge + ((width - 2 * edge) * v) / high;
  const usable = Math.max(low, fifth);
  const on = mark >= 0 && mark <= high;
  return html`<figure class="picture">
    <svg viewBox="0 0 ${width} 74" role="img" aria-label=${t('bench.scale')}>
      <rect class="idle" x=${edge} y="30" width=${at(usable) - edge} height="16" />
      <rect class="usable" x=${at(usable)} y="30" width=${at(high) - at(usable)} height="16" />
      <text class="tick" x=${edge} y="64">0</text>
      <text class="tick" x=${at(usable)} y="64" text-anchor="middle">${usable}</text>
      <text class="tick" x=${width - edge} y="64" text-anchor="end">${high} ${unit}</text>
      ${
        on
          ? svg`<path class="mark" data-off=${!setting} d="M${at(mark)} 30l-7 -12h14z" />
              <line class="mark" x1=${at(mark)} x2=${at(mark)} y1="30" y2="46" />`
          : nothing
      }
    </svg>
  </figure>`;
}
