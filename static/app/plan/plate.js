import { html } from 'lit-html';
import { t } from '../words/catalogue.js';
import { large, standing, textsOf } from '../ui/figure.js';

/** @import { PlateFigure } from '../core/core.d.ts' */

/**
 * A plate of ruled figures: each with its name, in the person's unit large and in others
 * small, with what is read with it and how far it can be trusted, or what `last` draws.
 *
 * @template {PlateFigure} Figure
 * @param {Figure[]} figures
 * @param {(figure: Figure) => unknown} [last]
 */
export const plate = (figures = [], last = (figure) => standing(figure, 'plate.page')) => {
  const widths = wide(figures);
  return html`<dl class="plate">
    ${figures.map((figure, n) => cell(figure, widths[n], last(figure)))}
  </dl>`;
};

/**
 * Which of the cells take a whole row of two: words that would begin one, and a figure that
 * would stand alone in the last.
 *
 * @param {PlateFigure[]} figures
 */
export function wide(figures) {
  let column = 0;
  return figures.map(({ words, standing }, n) => {
    const text = words && standing !== 'unknown';
    const whole = column === 0 && (text || n === figures.length - 1);
    if (!whole) column = 1 - column;
    return whole;
  });
}

/**
 * @param {PlateFigure} figure
 * @param {boolean} whole
 * @param {unknown} last
 */
function cell(figure, whole, last) {
  const { name = '', values, count = 0, words, beside = [] } = figure;
  const [first, ...others] = textsOf(figure);
  const notes = [...others, ...textsOf({ texts: beside, values })];
  const said = t(name, values);
  return html`<div ?data-whole=${whole}>
    <dt class=${words ? 'hidden' : ''}>
      ${count > 1 ? `${t('plan.count', { count })} ${said}` : html`<span>${said}</span>`}
    </dt>
    <dd ?data-words=${words}>
      ${first && !words ? large(first) : html`<strong>${first ?? t('not-known')}</strong>`}
      ${notes.map((note) => html`<span class="note">${note}</span>`)} ${last}
    </dd>
  </div>`;
}
