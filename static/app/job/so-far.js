import { html, nothing } from 'lit-html';
import { helpLink, sinceLast } from '../ui/help.js';
import { t, text } from '../words/catalogue.js';

/** @import { Warmth } from '../core/core.d.ts' */

/** The oil that a reading is about, as the job's balance has it. */
export const oilOf = (job, { of }) => job.state.oils?.find((o) => o.circuit === of);

/** What the readings so far come to, at the step that asks for them. */
export function soFar(job, ask) {
  const oil = oilOf(job, ask) ?? {};
  if (ask.what === 'temperature') return warmth(job.state.warmth);
  if (ask.what === 'drained') return drained(oil);
  return ask.what === 'poured' ? poured(oil) : nothing;
}

const verdict = (content) => html`<p class="verdict" role="status">${content}</p>`;

const drained = ({ drained: sum, caught, since }) =>
  sum
    ? html`${verdict(html`<strong class="value">${text(sum[0])}</strong> ${t(caught)}`)}
      ${since ? html`<p>${sinceLast(since)} ${since.help ? helpLink(since.help) : nothing}</p>` : nothing}`
    : nothing;

const poured = ({ pouring, due, poured: sum, left }) =>
  pouring ? verdict(t(pouring, { poured: sum[0], due: due?.[0], left: left?.[0] })) : nothing;

/** @param {Partial<Warmth>} warmth */
function warmth({ word, burns, wait } = {}) {
  if (!word) return nothing;
  return html`${verdict(t(word))}
  ${burns ? html`<p>${t('job.warmth.burns', { time: burns[0] })}</p>` : nothing}
  ${wait ? html`<p>${t('job.warmth.wait', { time: wait[0] })}</p>` : nothing}`;
}
