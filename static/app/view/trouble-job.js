import { html, nothing } from 'lit-html';
import { t, when } from '../words.js';
import { outcome } from './outcome.js';
import { troubleAt } from './trouble-address.js';

/** From a step to what may be wrong. */
export const wrong = (work, step) =>
  html`<p>
    <a class="button quiet wrong" href=${troubleAt('', { job: work.record.id, step: step.id })}
      >${t('job.trouble')}</a
    >
  </p>`;

/** Where a problem kept in a job was judged: to look again, or judge anew. */
function again({ record }, { what, step, signs = {} }) {
  const { hand = '', ...answers } = signs;
  return troubleAt(what, { answers, hand: hand.split(' ').filter(Boolean), job: record.id, step });
}

/** The problems that stop the bike, on every step until they are taken back or judged anew. */
export const stops = (work, control) =>
  (work.state.problems ?? [])
    .filter((p) => p.stops)
    .map(
      (p) =>
        html`<section class="stops" aria-label=${t('trouble.in-job')}>
          <p class="bar"><a class="all" href=${again(work, p)}>${t(`fault.${p.what}`)}</a></p>
          ${outcome(p)}
          <button type="button" class="quiet" @click=${() => control.takeBack(p.id)}>
            ${t('trouble.take-back')}
          </button>
        </section>`,
    );

/** The problems of a job, for its record. */
export const problems = (work) =>
  (work.state.problems ?? []).map((p) => {
    const at = p.step && work.step(p.step);
    return html`<article class="sheet">
      <h3>${t(`fault.${p.what}`)}</h3>
      ${outcome(p)}
      <p><small>${at ? t(at.word, at.values) : nothing} ${when(p.time)}</small></p>
    </article>`;
  });
