import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { figureRow, standing, textsOf, value } from '../ui/figure.js';
import { own } from '../site/own.js';

/** @import { Item } from '../core/core.d.ts' */

/** What the card does not know, and where to find it. */
export function gaps(list) {
  return html`<section class="gaps-sheet">
    <h2>? ${t('plan.gaps')}</h2>
    <p>${t('plan.gaps.note')}</p>
    <ul>
      ${list.map(({ word, values, lookup }) => html`<li><strong>${t(word, values)}</strong> ${t(lookup)}</li>`)}
    </ul>
  </section>`;
}

/** How much oil of which kind, circuit by circuit. */
export function oilSheets(oils) {
  return html`<section class="oils">
    <h2>${t('plan.oil')}</h2>
    ${oils.map(
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
            ${[oil.chart, oil.rows, ...(oil.figures ?? [])].filter(Boolean).map(figureRow)}
          </dl>
        </article>`,
    )}
  </section>`;
}

/** How tight, fastener by fastener; what is to be left alone comes last. */
export function boltSheets(bolts = []) {
  const turned = bolts.filter((b) => b.listed);
  const left = bolts.filter((b) => b.leave);
  return html`<section class="bolts">
    <h2>${t('plan.bolts')}</h2>
    <p>${t('plan.bolts.note')}</p>
    ${turned.map(bolt)}
    ${
      left.length
        ? html`<h3>✕ ${t('plan.leave')}</h3>
            <ul>
              ${left.map((b) => html`<li>${text(b.place)}</li>`)}
            </ul>`
        : nothing
    }
  </section>`;
}

function bolt(sheet) {
  const { purpose, place, count, thread, tool, turn, seal, sealSize } = sheet;
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

const row = (word, content) =>
  html`<div class="figure">
    <dt>${t(word)}</dt>
    <dd>${content || t('not-known')}</dd>
  </div>`;

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
export function lists(word, items = []) {
  return html`<section>
    <h2>${t(word)}</h2>
    <ul class="items">
      ${items.map(
        ({ word: id, values, count, against }) =>
          html`<li>
            ${count > 1 ? html`<span class="count">${t('plan.count', { count })}</span>` : nothing}
            <span>${t(id, values)} ${heldAgainst({ against, values })}</span>
          </li>`,
      )}
    </ul>
  </section>`;
}

/** The seven stages with their steps, to read before the job. */
export function stages(steps) {
  const names = [...new Set(steps.map((s) => s.stage))];
  return html`<section class="stages">
    <h2>${t('plan.steps')}</h2>
    ${names.map((name) => {
      const own = steps.filter((s) => s.stage === name);
      return html`<details>
        <summary>
          ${t(`stage.${name}`)} <small>${t('plan.steps-count', { count: own.length })}</small>
        </summary>
        <ol>
          ${own.map((s) => html`<li>${t(s.word, s.values)}</li>`)}
        </ol>
      </details>`;
    })}
  </section>`;
}
