import { html, nothing } from 'lit-html';
import { t, text, verbatim } from '../words/catalogue.js';
import { findings } from '../ui/findings.js';
import { short } from '../ui/lists.js';
import { section } from '../ui/section.js';

/** @import { Missing, WantedLine, WantedList } from '../core/core.d.ts' */

/**
 * The bikes that were put on the list, besides the open jobs.
 *
 * @param {import('./book.js').Book} book
 * @returns {string[]}
 */
export const chosenOf = (book) => {
  const ids = book.drafts.get('list');
  return Array.isArray(ids) ? ids : [];
};

/**
 * What open jobs and the bikes of a list need, what of it is on the shelf, and what is
 * missing for all of them.
 *
 * @param {import('./book.js').Book} book
 * @param {Map<string, string>} bikes that may be put on it
 * @param {(ids: string[]) => unknown} choose
 */
export function list(book, bikes, choose) {
  const { lists = [], missing = [], findings: found } = book.answer;
  return html`
    <h1 tabindex="-1">${t('books.list')}</h1>
    <p>${t('books.list.how')}</p>
    ${findings(found)} ${adding(book, bikes, choose)}
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
    ${lists.map((wanted) => of(wanted, chosenOf(book), choose))}
  `;
}

/** @param {Missing} missing */
const lacking = ({ word, values, lacking: much, what }) =>
  html`<strong class="count"
      >${what === 'oil' ? much?.[0] : t('books.times', { count: much?.[0] })}</strong
    >
    ${t(word, values)}`;

const adding = (book, bikes, choose) => {
  const chosen = chosenOf(book);
  const free = [...bikes].filter(([id]) => !chosen.includes(id));
  if (!free.length) return nothing;
  const put = ({ target }) => {
    const { value } = target;
    target.value = '';
    if (value) choose([...chosen, value]);
  };
  return html`<p class="ask">
    <label for="list-add">${t('books.list.add')}</label>
    <select id="list-add" @change=${put}>
      <option value="">${t('bench.choose')}</option>
      ${free.map(([id, name]) => html`<option value=${id}>${short(name)}</option>`)}
    </select>
  </p>`;
};

/**
 * @param {WantedList} wanted
 * @param {string[]} chosen
 * @param {(ids: string[]) => unknown} choose
 */
const of = ({ id, name, lines = [] }, chosen, choose) =>
  html`<section>
    <h2>${text(name ?? '')}</h2>
    ${
      chosen.includes(id)
        ? html`<p class="entry">
            <button
              type="button"
              class="quiet"
              @click=${() => choose(chosen.filter((other) => other !== id))}
            >
              ${t('books.list.drop')}
            </button>
          </p>`
        : nothing
    }
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
    ${picks.map(({ name, takes }) => html`<p>${verbatim(name ?? '')}: ${text(takes?.[0])}</p>`)}
    ${others.map(
      ({ name, verdict, reasons = [] }) =>
        html`<p>${verbatim(name ?? '')}: ${t(verdict)}</p>
          ${findings(reasons.slice(0, 1).map((code) => ({ code, where: '', grade: 'doubt' })))}`,
    )}`;
