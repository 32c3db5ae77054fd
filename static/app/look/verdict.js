import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { finding } from '../ui/findings.js';
import { own } from '../site/own.js';

// A verdict is shown by a shape and a word, never by colour alone.
const shapes = { 'debris.normal': '○', 'debris.watch': '▲', 'debris.stop': '■' };

/** A verdict on what came out. */
export const verdict = (word) =>
  html`<p class="verdict" data-verdict=${word}>
    <span aria-hidden="true">${own(shapes, word) ?? '?'}</span> ${t(word)}
  </p>`;

/** A look as it was judged: verdict, how it compares, what it may be, and what next. */
export function judged({ verdict: word, compared = [], reasons = [], next = [] }) {
  return html`
    ${verdict(word)} ${compared.map(finding)} ${reasons.map(short)}
    ${
      next.length
        ? html`<h3>${t('look.next')}</h3>
            <ul class="next">
              ${next.map((action) => html`<li>${t(action)}</li>`)}
            </ul>`
        : nothing
    }
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
  const { looks = [], verdict: worst } = job.state;
  if (!looks.length) return nothing;
  return html`<section class="seen">
    <h2>${t('look.title')}</h2>
    ${looks.length > 1 ? verdict(worst) : nothing}
    ${looks.map((look) => one(look, job.step(look.step)))}
  </section>`;
}

const one = (look, step) =>
  html`<article class="sheet">
    <h3>${step ? t(step.word, step.values) : text(look.step)}</h3>
    ${look.told ? html`<p>${look.told.map((w) => t(w)).join(' · ')}</p>` : nothing} ${judged(look)}
  </article>`;

/** What was seen at each step that looks, and the worst of it. */
export function summed({ plan, state }) {
  const { looks = [], verdict: worst } = state;
  const lookOf = ({ id }) => looks.find(({ step }) => step === id);
  return html`<section class="seen">
    <h2>${t('look.sum')}</h2>
    ${worst ? verdict(worst) : html`<p>${t('look.none')}</p>`}
    <dl>
      ${plan.steps
        .filter((s) => s.look)
        .map(
          (s) =>
            html`<div class="figure">
              <dt>${t(s.word, s.values)}</dt>
              <dd>${t(lookOf(s)?.verdict ?? 'look.not-looked')}</dd>
            </div>`,
        )}
    </dl>
  </section>`;
}
