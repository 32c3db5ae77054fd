import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';
import { when } from '../words/dates.js';
import { outcome } from './outcome.js';
import { troubleAt } from './address.js';

/** @import { Trouble } from '../core/core.d.ts' */

/** From a step to what may be wrong. */
export const wrong = (job, step) =>
  html`<p>
    <a class="button quiet wrong" href=${troubleAt('', { job: job.record.id, step: step.id })}
      >${t('job.trouble')}</a
    >
  </p>`;

/**
 * Where a problem kept in a job was judged: to look again, or judge anew.
 *
 * @param {{ record: { id: string } }} job
 * @param {Trouble} trouble
 */
function again({ record }, { what, step, signs = {} }) {
  const { hand = '', ...answers } = signs;
  return troubleAt(what, { answers, hand: hand.split(' ').filter(Boolean), job: record.id, step });
}

/** The problems that stop the bike, on every step until they are taken back or judged anew. */
export const stops = (job, control) =>
  (job.state.problems ?? [])
    .filter((p) => p.stops)
    .map(
      (p) =>
        html`<section class="stops" aria-label=${t('trouble.in-job')}>
          <p class="bar"><a class="all" href=${again(job, p)}>${t(`fault.${p.what}`)}</a></p>
          ${outcome(p)}
          <button type="button" class="quiet" @click=${() => control.takeBack(p.id)}>
            ${t('trouble.take-back')}
          </button>
        </section>`,
    );

/** The problems of a job, for its record. */
export const problems = (job) =>
  (job.state.problems ?? []).map((p) => {
    const at = p.step && job.step(p.step);
    return html`<article class="sheet">
      <h3>${t(`fault.${p.what}`)}</h3>
      ${outcome(p)}
      <p><small>${at ? t(at.word, at.values) : nothing} ${when(p.time)}</small></p>
    </article>`;
  });
