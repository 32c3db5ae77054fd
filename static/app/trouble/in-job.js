import { html, nothing } from 'lit-html';
import { loadWordsOf, t } from '../words/catalogue.js';
import { when } from '../words/dates.js';
import { outcome } from './outcome.js';
import { troubleAt } from './address.js';

/** @import { Trouble } from '../core/core.d.ts' */

const field = /^problem-(.+)$/; // in the drafts of a job

/** The problems that were begun to be judged at a step, and not kept: ids. */
const begun = (step, drafts) =>
  drafts.flatMap(([name, value]) => (value?.step === step.id && name.match(field)?.[1]) || []);

/** Fetches the words for the problems that wait in a job's drafts, if any do. */
export const loadBegun = (drafts) =>
  drafts.some(([name]) => field.test(name)) ? loadWordsOf('faults').catch(() => {}) : undefined;

/** From a step to what may be wrong, and to what one has begun to answer. */
export const wrong = (job, step, drafts) => {
  const from = { job: job.record.id, step: step.id };
  return html`<p>
      <a class="button quiet wrong" href=${troubleAt('', from)}>${t('job.trouble')}</a>
    </p>
    ${begun(step, drafts).map(
      (id) =>
        html`<p class="draft">
          <a class="button quiet" href=${troubleAt(id, from)}>${t(`fault.${id}`)}</a>
          ✎ ${t('draft.written')}
        </p>`,
    )}`;
};

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
