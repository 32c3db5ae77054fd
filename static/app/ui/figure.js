import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { own } from '../site/own.js';

/** @import { ShownFigure, Standing } from '../core/core.d.ts' */

// How far a figure can be trusted is said by a shape and a word, never by
// colour alone.
/** @type {{ [standing in Standing]: string }} */
const shapes = {
  manual: '■',
  measured: '◆',
  decided: '●',
  estimated: '≈',
  standard: '▲',
  unknown: '?',
};

/**
 * Where a figure comes from, in words.
 *
 * @param {ShownFigure} figure
 */
function origin({ standing, source, page, method, lookup }) {
  if (standing === 'unknown') return lookup ? t(lookup) : '';
  if (standing === 'manual')
    return t(page ? 'standing.manual.from' : 'standing.manual.title', { source, page });
  return t(`standing.${standing}.from`, { method: text(method ?? '@not-known') });
}

/**
 * The bare mark of a figure's standing.
 *
 * @param {ShownFigure} figure
 */
export const mark = ({ standing: grade = 'unknown' }) => own(shapes, grade);

/** All marks with what they stand for. */
export const marks = () =>
  Object.entries(shapes)
    .map(([grade, shape]) => `${shape} ${t(`standing.${grade}`)}`)
    .join(', ');

/**
 * The mark of a figure's standing; opens to say where the figure comes from.
 *
 * @param {ShownFigure} figure
 * @param {string} [paged] the word for a page of a manual
 */
export function standing(figure, paged = 'standing.manual.page') {
  const { standing: grade = 'unknown', page, kept, quote } = figure;
  const word = grade === 'manual' && page ? t(paged, { page }) : t(`standing.${grade}`);
  return html`<details class="standing" data-standing=${grade}>
    <summary><span aria-hidden="true">${own(shapes, grade)}</span> ${word}</summary>
    <p>${origin(figure)}${kept ? ` ${t('standing.kept', { why: kept })}` : nothing}</p>
    ${quote ? html`<p>${t('standing.quote', { words: quote })}</p>` : nothing}
  </details>`;
}

/**
 * The texts of a figure as they are read; one that is a word is filled from its values.
 *
 * @param {Pick<ShownFigure, 'texts' | 'values'>} figure
 */
export const textsOf = ({ texts = [], values }) =>
  texts.map((one) => (values && one.startsWith('@') ? t(one.slice(1), values) : text(one)));

const mostLarge = 4; // signs of a number; a longer one, such as a range, is less large

/**
 * The number and the unit of a figure's text, to be drawn in <bdi>: the marks of its
 * direction, of which each would stand in another part, are left out. One without a number
 * in front is a number as a whole.
 *
 * @param {string} one
 */
export function parted(one) {
  const bare = one.replace(/[\u2066-\u2069]/g, '');
  const [, number = bare, unit = ''] = /^([^\p{L}°]+)[ \u00a0](.+)$/u.exec(bare) ?? [];
  return { number, unit };
}

/**
 * A text of a figure, drawn large: its number larger than its unit.
 *
 * @param {string} one
 */
export function large(one) {
  const { number, unit } = parted(one);
  return html`<bdi class="large" ?data-long=${number.length > mostLarge}
    ><span class="number">${number}</span
    >${unit ? html`<span class="unit"> ${unit}</span>` : nothing}</bdi
  >`;
}

/**
 * A figure as it is read: the person's unit large, the others beside it.
 *
 * @param {ShownFigure} figure
 * @param {(one: string) => unknown} [draw] how the person's unit is drawn
 */
export function value(figure, draw = (one) => one) {
  const [first, ...others] = textsOf(figure);
  if (!first) return html`<span class="value unknown">${t('not-known')}</span>`;
  return html`<span class="value">${draw(first)}</span
    >${others.map((o) => html` <span class="other">${o}</span>`)}`;
}

/**
 * A figure with its name and standing, as a row of a list.
 *
 * @param {ShownFigure} figure
 */
export const figureRow = (figure) => row(figure, value(figure));

/**
 * The same of the figure that a screen is for: its number is larger than any other.
 *
 * @param {ShownFigure} figure
 */
export const largestRow = (figure) =>
  row(
    figure,
    value(figure, (one) => (parted(one).unit ? large(one) : one)),
  );

/**
 * @param {ShownFigure} figure
 * @param {unknown} drawn
 */
const row = (figure, drawn) =>
  html`<div class="figure">
    <dt>${t(figure.name ?? '')}</dt>
    <dd>${drawn} ${standing(figure)}</dd>
  </div>`;
