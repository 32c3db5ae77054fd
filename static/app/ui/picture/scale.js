import { html, nothing, svg } from 'lit-html';
import { t } from '../../words/catalogue.js';

/** @import { WrenchAnswerWrenches } from '../../core/core.d.ts' */

const width = 340;
const edge = 12;

/**
 * The scale of a torque wrench: hatched where it must not be used, with the mark
 * to set, both as shares of it. What it shows is said in words beside it.
 *
 * @param {WrenchAnswerWrenches} wrench
 */
export function scale({ unit, high, usable, usableAt = 0, markAt, setting }) {
  const at = (/** @type {number} */ share) => edge + (width - 2 * edge) * share;
  return html`<figure class="picture">
    <svg viewBox="0 0 ${width} 74" role="img" aria-label=${t('bench.scale')}>
      <rect class="idle" x=${edge} y="30" width=${at(usableAt) - edge} height="16" />
      <rect class="usable" x=${at(usableAt)} y="30" width=${at(1) - at(usableAt)} height="16" />
      <text class="tick" x=${edge} y="64">0</text>
      <text class="tick" x=${at(usableAt)} y="64" text-anchor="middle">${usable}</text>
      <text class="tick" x=${width - edge} y="64" text-anchor="end">${high} ${unit}</text>
      ${
        markAt === undefined
          ? nothing
          : svg`<path class="mark" data-off=${!setting} d="M${at(markAt)} 30l-7 -12h14z" />
              <line class="mark" x1=${at(markAt)} x2=${at(markAt)} y1="30" y2="46" />`
      }
    </svg>
  </figure>`;
}
