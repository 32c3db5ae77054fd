import { html, nothing } from 'lit-html';
import { ticks } from '../ui/choice.js';
import { draftMark } from '../ui/draft-mark.js';
import { t } from '../words/catalogue.js';

/** @import { Item, Step } from '../core/core.d.ts' */

/**
 * The field in which the ticks of a step are kept until it is done.
 *
 * @param {Step} step
 */
export const tallyField = (step) => `tally-${step.id}`;

/** @param {Item} item */
export const sayItem = ({ word, values, count }) =>
  [count ? t('plan.count', { count }) : '', t(word, values)].filter(Boolean).join(' ');

/** What is to be touched and sayItem at a step, each thing with a box to tick until the step is done. */
export function tally(job, step, control) {
  const { tally: items = [] } = step;
  if (!items.length) return nothing;
  if (job.isDone(step.id))
    return html`<ol class="tally">
      ${items.map((item) => html`<li>${sayItem(item)}</li>`)}
    </ol>`;
  const field = tallyField(step);
  const ticked = control.ticked(field);
  const lines = items.map((item, i) => ({
    id: String(i + 1),
    label: html`<strong class="number">${i + 1}</strong> ${sayItem(item)}`,
    on: ticked.includes(String(i + 1)),
  }));
  return html`<div class="tally">
    ${ticks('job.tally', lines, (id, on) => control.tick(field, id, on))}
    <p role="status">
      ${t('job.tally.count', { ticked: lines.filter(({ on }) => on).length, count: items.length })}
    </p>
    ${draftMark(control.standing(field))}
  </div>`;
}
