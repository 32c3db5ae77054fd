import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { findings } from '../ui/findings.js';
import { section } from '../ui/section.js';

/** @import { Missing, WantedLine, WantedList } from '../core/core.d.ts' */

/**
 * What open jobs need, what of it is on the shelf, and what is missing for all of them.
 *
 * @param {import('./book.js').Book} book
 */
export function list(book) {
  const { lists = [], missing = [], findings: found } = book.answer;
  return html`
    <h1 tabindex="-1">${t('books.list')}</h1>
    <p>${t('books.list.how')}</p>
    ${findings(found)}
    ${
      lists.length
        ? section(
            'books.list.missing',
            missing.length
              ? html`<ul class="items">
                  ${missing.map((of) => html`<li>${lacking(of)}</li>`)}
                </ul>`
              : html`<p>${t('books.list.nothing')}</p>`,
          )
        : html`<p>${t('books.list.none')}</p>`
    }
    ${lists.map(of)}
  `;
}

/** @param {Missing} missing */
const lacking = ({ word, values, lacking: much, what }) =>
  html`<strong class="count"
      >${what === 'oil' ? much?.[0] : t('books.times', { count: much?.[0] })}</strong
    >
    ${t(word, values)}`;

/** @param {WantedList} wanted */
const of = ({ name, lines = [] }) =>
  html`<section>
    <h2>${text(name ?? '')}</h2>
    ${lines.length ? lines.map((line) => html`<article class="sheet">${wanted(line)}</article>`) : html`<p>${t('books.list.unplanned')}</p>`}
  </section>`;

/**
 * A line of a list: what is needed, whether the shelf has it, and what of it.
 *
 * @param {WantedLine} line
 */
export const wanted = ({ word, values, state, picks = [], others = [], lacking: much }) =>
  html`<h3>${t(word, values)}</h3>
    <p class=${state === 'shelf-line.short' ? 'book-warn' : ''}>
      ${t(state)}${much ? html`. ${t('books.list.lacks', { much: much[0] })}` : nothing}
    </p>
    ${picks.map(({ name, takes }) => html`<p>${text(name ?? '')}: ${takes?.[0]}</p>`)}
    ${others.map(
      ({ name, verdict, reasons = [] }) =>
        html`<p>${text(name ?? '')}: ${t(verdict)}</p>
          ${findings(reasons.slice(0, 1).map((code) => ({ code, where: '', grade: 'doubt' })))}`,
    )}`;
