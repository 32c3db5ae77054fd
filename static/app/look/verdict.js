import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { address } from '../ui/address.js';
import { finding } from '../ui/findings.js';
import { own } from '../site/own.js';

// A verdict is shown by a shape and a word, never by colour alone.
const shapes = {
  'debris.normal': '○',
  'debris.partly': '◌',
  'debris.watch': '▲',
  'debris.stop': '■',
};

/** A verdict on what came out. */
export const verdict = (word) =>
  html`<p class="verdict" data-verdict=${word}>
    <span aria-hidden="true">${own(shapes, word) ?? '?'}</span> ${t(word)}
  </p>`;

/** What to do next, in the order of doing. */
const whatNext = (actions = []) =>
  actions.length
    ? html`<h3>${t('look.next')}</h3>
        <ul class="next">
          ${actions.map((action) => html`<li>${t(action)}</li>`)}
        </ul>`
    : nothing;

/** A look as it was judged: verdict, how it compares, what it may be, and what next. */
export function judged({ verdict: word, compared = [], reasons = [], next = [] }) {
  return html`
    ${verdict(word)} ${compared.map(finding)} ${reasons.map(short)} ${whatNext(next)}
    ${
      reasons.length
        ? html`<details>
            <summary>${t('look.more')}</summary>
            ${reasons.map(finding)}
          </details>`
        : nothing
    }
  `;
}

const short = ({ code, grade }) =>
  html`<p class="finding" data-grade=${grade}>${t(`finding.${code}`)}</p>`;

/** All that was seen in a job, for its record; nothing if nobody looked. */
export function seen(job) {
  const { looks = [], verdict: worst, actions } = job.state;
  if (!looks.length) return nothing;
  return html`<section class="seen">
    <h2>${t('look.title')}</h2>
    ${verdict(worst)} ${whatNext(actions)} ${looks.map((look) => one(look, job.step(look.step)))}
    ${unseen(job).map(({ word, values }) => html`<p>${t(word, values)}: ${t('look.not-looked')}</p>`)}
  </section>`;
}

// What to do next is said once, of them all.
const one = (look, step) =>
  html`<article class="sheet">
    <h3>${step ? t(step.word, step.values) : text(look.step)}</h3>
    ${look.told ? html`<p>${look.told.map((w) => t(w)).join(' · ')}</p>` : nothing}
    ${judged({ ...look, next: [] })}
  </article>`;

const lookOf = ({ looks = [] }, { id }) => looks.find(({ step }) => step === id);

/** The steps that look, of which nobody has said what was seen. */
const unseen = ({ plan, state }) => plan.steps.filter((s) => s.look && !lookOf(state, s));

/** What was seen at each step that looks, the worst of it, and what to do next. */
export function summed(job) {
  const { verdict: worst, actions } = job.state;
  return html`<section class="seen">
    <h2>${t('look.sum')}</h2>
    ${worst ? verdict(worst) : html`<p>${t('look.none')}</p>`} ${whatNext(actions)}
    ${job.plan.steps.filter((s) => s.look).map((s) => at(job, s))}
  </section>`;
}

/** One step that looks: its verdict and the reasons for it, one tap away from the step. */
function at(job, step) {
  const { verdict: word = 'look.not-looked', reasons = [] } = lookOf(job.state, step) ?? {};
  return html`<h3>
      <a href=${address('job', job.record.id, 'step', step.id)}>${t(step.word, step.values)}</a>
    </h3>
    <p>${t(word)}</p>
    ${reasons.map(short)}`;
}
