import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { address } from '../router.js';
import { t } from '../words.js';
import { ticks } from './choice.js';
import { findings, warning } from './figure.js';
import { outcome } from './outcome.js';
import { troubleAt } from './trouble-address.js';

/** What to do about a problem: what follows, the questions, and the rest of it. */
export function answer(work) {
  const { fault, state, verdict } = work;
  const { job, step } = state;
  return html`
    <header class="bar">
      <a class="all" href=${troubleAt('', { job, step })}>${t('trouble.all')}</a>
    </header>
    <h1 tabindex="-1">${t(`fault.${fault.id}`)}</h1>
    <div class="follows" role="status">
      ${verdict?.ok ? outcome(verdict.ok) : nothing} ${verdict ? nothing : t('trouble.waiting')}
    </div>
    ${verdict ? findings(verdict.findings) : nothing} ${cautions(verdict, true)}
    ${(fault.asks ?? []).map((q) => question(work, q))} ${atHand(work)} ${cautions(verdict, false)}
    ${verdict?.ok ? doing(verdict.ok) : nothing} ${job ? inJob(work) : nothing}
  `;
}

// Danger comes before everything else, the others before what one does now.
const cautions = (verdict, first) =>
  (verdict?.ok?.warns ?? []).filter((w) => (w.signal === 'DANGER') === first).map(warning);

function question(work, id) {
  const { table, state } = work;
  const given = state.answers?.[id];
  return html`<fieldset class="choice">
    <legend>${t(`fault-ask.${id}`)}</legend>
    ${table.questions[id]
      .split(' ')
      .map(
        (a) =>
          html`<label
            ><input
              type="radio"
              name=${id}
              .checked=${live(a === given)}
              @change=${() => work.answer(id, a)}
            />
            <span>${t(`fault-answer.${id}.${a}`)}</span></label
          >`,
      )}
  </fieldset>`;
}

function atHand(work) {
  const { hand: things = [] } = work.fault;
  const { hand = [] } = work.state;
  const lines = things.map((id) => ({ id, label: t(`hand.${id}`), on: hand.includes(id) }));
  return things.length ? ticks('trouble.hand', lines, (id, on) => work.have(id, on)) : nothing;
}

const part = (word, list, ordered) =>
  list
    ? html`<section>
        <h2>${t(word)}</h2>
        ${
          ordered
            ? html`<ol class="doing">
                ${list.map((w) => html`<li>${t(w)}</li>`)}
              </ol>`
            : html`<ul class="doing">
                ${list.map((w) => html`<li>${t(w)}</li>`)}
              </ul>`
        }
      </section>`
    : nothing;

function doing({ now, limits, home, sure, why, source, feared }) {
  return html`
    ${part('trouble.now', now, true)} ${part('trouble.limits', limits)}
    ${part('trouble.home', home)}
    <section>
      <h2>${t('trouble.sure', { sure: t(`sure.${sure}`) })}</h2>
      ${feared ? html`<p>${t('trouble.open')}</p>` : nothing}
      ${why ? html`<p>${t(why)}</p>` : nothing} ${source ? html`<p>${t(source)}</p>` : nothing}
      <p>${t('trouble.defer')}</p>
    </section>
  `;
}

/** What one can do with it in the job one comes from. */
function inJob(work) {
  const { job, step } = work.state;
  const back = step ? address('job', job, 'step', step) : address('job', job);
  return html`<div class="bar">
    <button
      type="button"
      class="main"
      ?disabled=${!work.verdict?.ok || work.kept}
      @click=${() => work.keep()}
    >
      ${t(work.kept ? 'trouble.kept' : 'trouble.keep')}
    </button>
    <a class="button quiet" href=${back}>${t('trouble.back-to-job')}</a>
  </div>`;
}
