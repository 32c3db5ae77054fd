import { html, svg } from 'lit-html';
import { t } from '../../words/catalogue.js';

/** @import { LevelAnswer } from '../../core/core.d.ts' */

// The gauge is drawn 200 units high, between margins; heights come from the core as
// shares of it.
const high = 200;
const margin = 10;
const middle = 100;
const at = (/** @type {number} */ share) => high - high * share + margin;

/**
 * The height of the gauge, as a share of it, at which something is on the screen: a
 * finger in the picture.
 *
 * @param {Element} svg of levelPicture
 * @param {number} clientY CSS px
 */
export function heightAt(svg, clientY) {
  const { top, height } = svg.getBoundingClientRect();
  const y = ((clientY - top) / height) * (high + 2 * margin);
  return Math.min(1, Math.max(0, (high + margin - y) / high));
}

/**
 * The level in a round glass or on a stick, with its marks and the band to aim at.
 *
 * @param {LevelAnswer} answer
 */
export function levelPicture({
  gauge: kind,
  line = 0,
  lowMark = 0,
  highMark = 0,
  aimLow = 0,
  aimHigh = 0,
}) {
  const window = kind === 'window';
  return html`<figure class="picture gauge">
    <svg viewBox="0 0 280 220" role="img" aria-label=${t('level.gauge')}>
      ${window ? glass(line) : stick(line)}
      <path class="aim" d="M204 ${at(aimHigh)}h6V${at(aimLow)}h-6" />
      ${beside((at(aimHigh) + at(aimLow)) / 2, 'level.aim')} ${mark(highMark, 'level.mark.high')}
      ${mark(lowMark, 'level.mark.low')}
    </svg>
  </figure>`;
}

/**
 * @param {number} share
 * @param {string} word
 */
const mark = (share, word) =>
  svg`<line class="gauge-mark" x1="4" x2="214" y1=${at(share)} y2=${at(share)} />
    ${beside(at(share), word)}`;

/**
 * A word beside the gauge at that height, in as many lines as it needs.
 *
 * @param {number} y
 * @param {string} word
 */
const beside = (y, word) =>
  svg`<foreignObject x="218" y=${y - 30} width="72" height="60">
    <div class="along"><span><bdi>${t(word)}</bdi></span></div>
  </foreignObject>`;

/** @param {number} line */
const glass = (line) =>
  svg`<clipPath id="glass"><circle cx=${middle} cy="110" r="100" /></clipPath>
    <rect class="oil-in" clip-path="url(#glass)" x="0" y=${at(line)} width="200" height=${210 - at(line)} />
    <circle class="rim" cx=${middle} cy="110" r="100" />`;

/** @param {number} line */
const stick = (line) =>
  svg`<rect class="oil-in" x="85" y=${at(line)} width="30" height=${210 - at(line)} />
    <rect class="rim" x="85" y="10" width="30" height="200" />`;
