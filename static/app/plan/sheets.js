import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { figureRow, standing, textsOf, value } from '../ui/figure.js';
import { address } from '../ui/address.js';
import { fold } from '../ui/section.js';
import { own } from '../site/own.js';

/** @import { Item } from '../core/core.d.ts' */

/**
 * What the card does not know: a line each, which opens to where it is found; in one's own
 * card, whose key is given, what is chosen is chosen there.
 */
export function gaps(list = [], { word: title = 'plan.gaps', key = '' } = {}) {
  if (!list.length) return nothing;
  return html`<section class="unknowns">
    <h2>${t(title)} <span class="count">${list.length}</span></h2>
    ${list.map(
      ({ word, values, lookup, at: place }) =>
        html`<details>
          <summary><span aria-hidden="true">?</span> ${t(`${word}.of`, values)}</summary>
          <p>${t(word, values)}. ${t(lookup)}</p>
          ${
            place && key
              ? html`<p>
                  <a class="button quiet" href=${address('edit', key)}>${t('plan.gap.choose')}</a>
                </p>`
              : nothing
          }
        </details>`,
    )}
  </section>`;
}

/** What is to be left alone, a line each. */
export const leftAlone = (bolts = []) =>
  bolts
    .filter(({ leave }) => leave)
    .map(({ place }) => html`<p class="line">✕ ${t('plan.leave.this', { place })}</p>`);

/** How much oil of which kind, circuit by circuit. */
export function oilSheets(oils) {
  return fold(
    'plan.oil',
    oils.length,
    oils.map(
      (oil) =>
        html`<article class="sheet" ?data-off=${!oil.today}>
          <h3>
            ${t(oil.role)}
            ${oil.today ? nothing : html`<span class="tag">${t('plan.not-today')}</span>`}
          </h3>
          <p class="big">${value(oil.due)}</p>
          ${standing(oil.due)}
          <dl>
            ${figureRow(oil.need)}
            ${[oil.chart, oil.rows, ...(oil.figures ?? []), ...(oil.quoted ?? [])].filter(Boolean).map(figureRow)}
          </dl>
        </article>`,
    ),
  );
}

/** How tight, fastener by fastener. */
export function boltSheets(bolts = []) {
  const turned = bolts.filter(({ listed }) => listed);
  return fold(
    'plan.bolts',
    turned.length,
    html`<p>${t('plan.bolts.note')}</p>
      ${turned.map(bolt)}`,
  );
}

function bolt(sheet) {
  const { purpose, place, count, thread, tool, size, turn, seal, sealSize, quoted = [] } = sheet;
  const row = (word, content) => {
    const from =
      quoted.find(({ name }) => name === word) ??
      (word === 'plan.tool' && size?.quote ? size : undefined);
    return html`<div class="figure">
      <dt>${t(word)}</dt>
      <dd>${content || t('not-known')} ${from ? standing(from) : nothing}</dd>
    </div>`;
  };
  const tight = own(sheet, sheet.by);
  return html`<article class="sheet">
    <h3>
      ${t(purpose)}
      ${count > 1 ? html`<span class="count">${t('plan.count', { count })}</span>` : nothing}
    </h3>
    <p>${text(place)}</p>
    <p class="big">${value(tight)}</p>
    ${standing(tight)}
    <dl>
      ${turn && turn !== tight ? figureRow(turn) : nothing}
      ${row('plan.thread', thread && text(thread))} ${row('plan.tool', tool?.map(text).join(', '))}
      ${seal ? row('plan.seal', [t(seal), text(sealSize ?? '')].filter(Boolean).join(', ')) : nothing}
    </dl>
  </article>`;
}

/**
 * What a part is held against before it is fitted.
 *
 * @param {Pick<Item, 'against' | 'values'>} part
 */
export const heldAgainst = ({ against, values }) =>
  against
    ? html`<small
        >${t('plan.against', { facts: textsOf({ texts: against, values }).join(' · ') })}</small
      >`
    : nothing;

/** A list of parts or tools to lay out. */
export const lists = (word, items = []) =>
  fold(
    word,
    items.length,
    html`<ul class="items">
      ${items.map(
        ({ word: id, values, count, against }) =>
          html`<li>
            ${count > 1 ? html`<span class="count">${t('plan.count', { count })}</span>` : nothing}
            <span>${t(id, values)} ${heldAgainst({ against, values })}</span>
          </li>`,
      )}
    </ul>`,
  );

/** The steps by their stages, to read before the job. */
export function stages(steps) {
  const names = [...new Set(steps.map((s) => s.stage))];
  return fold(
    'plan.steps',
    steps.length,
    names.map((name) => {
      const own = steps.filter((s) => s.stage === name);
      return html`<h3>
          ${t(`stage.${name}`)} <small>${t('plan.steps-count', { count: own.length })}</small>
        </h3>
        <ol>
          ${own.map((s) => html`<li>${t(s.word, s.values)}</li>`)}
        </ol>`;
    }),
  );
}
