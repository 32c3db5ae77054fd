import { html, nothing, svg } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { dayText, shortMonth } from '../words/dates.js';

/** @import { DueOil, LastReading, Place } from '../core/core.d.ts' */

// The picture is drawn in its own units; the core's places are thousandths of what it is
// drawn on, which leaves room for the words above and below.
const width = 320;
const height = 132;
const top = 24;
const below = 20;
const letters = 12;

// What is nothing is left out.
const across = (x = 0) => (x / 1000) * width;
const up = (y = 0) => top + (1 - y / 1000) * height;
const line = (/** @type {Place[]} */ list) =>
  list.map(({ x, y }) => `${across(x)},${up(y)}`).join(' ');

const edge = 85; // thousandths in which the words of a tick would reach beyond the picture
const edged = (x = 0) => x < edge || x > 1000 - edge;

/** Words that stand at a place across: at an edge they turn inwards. */
const anchor = (x = 0) => (!edged(x) ? 'middle' : x < edge ? 'start' : 'end');

const near = 90; // thousandths in which two lines of words would stand on each other
const foot = 130; // those in which the day of the limit stands, at the bottom
const head = 940; // those above which "today" would be touched

/**
 * What was ridden since an oil was changed, between both limits, and what that says.
 *
 * @param {DueOil} oil
 * @param {LastReading | undefined} last
 */
export function plot({ plot: drawn, changed, changedAt, at, hours, day }, last) {
  if (!drawn) return nothing;
  const {
    read = [],
    limit,
    today,
    middle = [],
    spread = [],
    ticks = [],
    marks = [],
    word,
    values,
  } = drawn;
  const { x: right = 0, y: high = 0 } = limit ?? {};
  const most = at?.[0] ?? hours ?? '';
  const label = t('plot.label', {
    from: changedAt?.[0],
    since: dayText(changed ?? ''),
    at: last?.texts?.[0],
    read: dayText(last?.day ?? ''),
    limit: most,
    day: dayText(day ?? ''),
  });
  return html`<figure class="picture plot">
    <svg
      viewBox=${`-5 0 ${width + 10} ${top + height + below}`}
      role="img"
      aria-label=${label}
      font-size=${letters}
    >
      ${marks.map(
        ({ y = 0, texts }) => svg`<line class="grid" x1="0" x2=${width} y1=${up(y)} y2=${up(y)} />
          ${
            Math.abs(y - high) < near || y < foot || y > head
              ? nothing
              : svg`<text class="word" x=${width} y=${up(y) - 3} text-anchor="end">${text(texts?.[0] ?? '')}</text>`
          }`,
      )}
      ${ticks.map(
        ({
          x,
          day: first,
        }) => svg`<line class="axis" x1=${across(x)} x2=${across(x)} y1=${up(0)} y2=${up(0) + 5} />
          ${edged(x) ? nothing : svg`<text class="word" x=${across(x)} y=${up(0) + 17} text-anchor="middle">${shortMonth(first)}</text>`}`,
      )}
      <path class="axis" d=${`M0 ${top}V${up(0)}H${width}`} />
      <line class="limit" x1="0" x2=${width} y1=${up(high)} y2=${up(high)} />
      <line class="limit" x1=${across(right)} x2=${across(right)} y1=${top} y2=${up(0)} />
      <text class="limit-word" x="4" y=${up(high) - 4}>${text(most)}</text>
      <text
        class="limit-word"
        x=${across(right) + (right < 500 ? 4 : -4)}
        y=${up(0) - 5}
        text-anchor=${right < 500 ? 'start' : 'end'}
      >
        ${dayText(day ?? '')}
      </text>
      <line class="today" x1=${across(today)} x2=${across(today)} y1=${top} y2=${up(0)} />
      <text class="word" x=${across(today)} y="11" text-anchor=${anchor(today)}>
        ${t('plot.today')}
      </text>
      ${
        middle.length
          ? svg`<polygon class="spread" points=${line(spread)} />
            <polyline class="estimate" points=${line(middle)} />`
          : nothing
      }
      <polyline class="ridden" points=${line(read)} />
      ${read.map(({ x, y }) => svg`<circle cx=${across(x)} cy=${up(y)} r="3.5" />`)}
    </svg>
    <figcaption>
      ${
        middle.length
          ? html`<span class="key"
              ><svg class="swatch" viewBox="0 0 34 4" aria-hidden="true">
                <line class="estimate" x1="0" x2="34" y1="2" y2="2" /></svg
              ><strong>${t('plot.estimate')}</strong></span
            >`
          : nothing
      }
      <span>${t(word ?? '', values)}</span>
    </figcaption>
  </figure>`;
}
