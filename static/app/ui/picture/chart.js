import { html, nothing, svg } from 'lit-html';
import { t, text } from '../../words/catalogue.js';

// The chart's size in its own units, which are about pixels on a phone.
const width = 340;
const height = 230;
const left = 58;
const right = 10;
const top = 10;
const bottom = 30;

/** @typedef {{ y: number[], to?: number[], word: string, values?: { [name: string]: string } }} Series */

/**
 * Curves over one axis. `x` and each series' `y` are the core's points; ticks are
 * the core's places with their texts. `log` draws the upright axis in powers. A
 * series with `to` is a band from y to it. The figures beside the chart are its
 * equivalent in text, so the picture itself says only what it is.
 *
 * @param {{ label: string, x: number[], series: Series[], xTicks?: number[], xTexts?: string[],
 *   yTicks?: number[], yTexts?: string[], log?: boolean }} drawn
 */
export function chart({ label, x, series, log = false, ...ticks }) {
  const { xTicks = [], xTexts = [], yTicks = [], yTexts = [] } = ticks;
  const across = scaleOf([...x, ...xTicks], left, width - right);
  const up = scaleOf(
    [...series.flatMap((s) => [...s.y, ...(s.to ?? [])]), ...yTicks],
    height - bottom,
    top,
    log,
  );
  return html`<figure class="picture">
    <svg viewBox="0 0 ${width} ${height}" role="img" aria-label=${t(label)}>
      ${yTicks.map(
        (v, n) =>
          svg`<line class="grid" x1=${left} x2=${width - right} y1=${up(v)} y2=${up(v)} />
            <text class="tick" x=${left - 6} y=${up(v) + 4} text-anchor="end">${text(yTexts[n])}</text>`,
      )}
      ${xTicks.map(
        (v, n) =>
          svg`<line class="grid" x1=${across(v)} x2=${across(v)} y1=${top} y2=${height - bottom} />
            <text class="tick" x=${across(v)} y=${height - bottom + 18} text-anchor=${across(v) > width - 40 ? 'end' : 'middle'}>${text(xTexts[n])}</text>`,
      )}
      ${series.map((s, n) => curve(s, n, x, across, up))}
    </svg>
    <figcaption>
      ${series.map(
        (s, n) =>
          html`<span class="key">
            <svg class="swatch" viewBox="0 0 30 10" aria-hidden="true">
              <path class="curve" data-line=${n} d="M0 5H30" />
            </svg>
            ${t(s.word, s.values)}
          </span>`,
      )}
    </figcaption>
  </figure>`;
}

/**
 * Maps the core's numbers to places on the picture.
 *
 * @param {number[]} values
 * @param {number} from
 * @param {number} to
 * @param {boolean} [log]
 */
function scaleOf(values, from, to, log = false) {
  const place = log ? Math.log10 : (/** @type {number} */ v) => v;
  const low = place(Math.min(...values));
  const high = place(Math.max(...values));
  return (/** @type {number} */ v) =>
    Number((from + ((to - from) * (place(v) - low)) / (high - low || 1)).toFixed(1));
}

/**
 * @param {Series} series
 * @param {number} n which of them it is
 * @param {number[]} x
 * @param {(v: number) => number} across
 * @param {(v: number) => number} up
 */
function curve({ y, to }, n, x, across, up) {
  const points = (/** @type {number[]} */ list) => list.map((v, i) => `${across(x[i])} ${up(v)}`);
  if (to) {
    const around = [...points(y), ...points(to).reverse()];
    return svg`<path class="band" d="M${around.join('L')}Z" />`;
  }
  return y.length
    ? svg`<path class="curve" data-line=${n} d="M${points(y).join('L')}" />`
    : nothing;
}
