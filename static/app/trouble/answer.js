import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { address } from '../ui/address.js';
import { hasWord, t } from '../words/catalogue.js';
import { ticks } from '../ui/choice.js';
import { draftMark } from '../ui/draft-mark.js';
import { findings, warning } from '../ui/findings.js';
import { aidLinks } from '../aid/links.js';
import { outcome } from './outcome.js';
import { troubleAt } from './address.js';
import { own } from '../site/own.js';

/** What to do about a problem: what follows, the questions, and the rest of it. */
export function answer(problem) {
  const { fault, state, verdict } = problem;
  const { job, step, bike, door } = state;
  return html`
    <header class="bar">
      <a class="all" href=${troubleAt('', { job, step, bike, door })}>${t('trouble.all')}</a>
    </header>
    <h1 tabindex="-1">${t(`fault.${fault.id}`)}</h1>
    ${leads(fault, { job, step })}
    <div class="follows" data-bar role="status">
      ${verdict?.ok ? outcome(verdict.ok) : nothing} ${verdict ? nothing : t('trouble.waiting')}
    </div>
    ${verdict?.ok?.other ? html`<p>${t('trouble.other')}</p>` : nothing}
    ${verdict ? findings(verdict.findings) : nothing} ${cautions(verdict, true)}
    ${problem.beside.levels(false)} ${(fault.asks ?? []).map((q) => question(problem, q))}
    ${atHand(problem)} ${cautions(verdict, false)} ${verdict?.ok ? doing(verdict.ok) : nothing}
    ${problem.beside.message()} ${job ? draftMark(problem.standing) : nothing}
    ${job ? inJob(problem) : nothing}
  `;
}

/** What helps more than this screen: first aid, or a calculation that judges it more closely. */
const leads = ({ aid, calc }, from) => html`
  ${aid ? aidLinks(from) : nothing}
  ${
    calc
      ? html`<p><a class="button quiet" href=${address('bench', calc)}>${t(`calc.${calc}`)}</a></p>`
      : nothing
  }
`;

// Danger comes before everything else, the others before what one does now.
const cautions = (verdict, first) =>
  (verdict?.ok?.warns ?? []).filter((w) => (w.signal === 'DANGER') === first).map(warning);

/** The word of an answer: its question's own, or the one that says that none fits. */
function answerWord(question, a) {
  const word = `fault-answer.${question}.${a}`;
  return hasWord(word) ? word : `fault-answer.${a}`;
}

function question(problem, id) {
  const { table, state } = problem;
  const given = own(state.answers, id);
  return html`<fieldset class="choice">
    <legend>${t(`fault-ask.${id}`)}</legend>
    ${own(table.questions, id)
      .split(' ')
      .map(
        (a) =>
          html`<label
            ><input
              type="radio"
              name=${id}
              .checked=${live(a === given)}
              @change=${() => problem.answer(id, a)}
            />
            <span>${t(answerWord(id, a))}</span></label
          >`,
      )}
  </fieldset>`;
}

function atHand(problem) {
  const { hand: things = [] } = problem.fault;
  const { hand = [] } = problem.state;
  const lines = things.map((id) => ({ id, label: t(`hand.${id}`), on: hand.includes(id) }));
  return things.length ? ticks('trouble.hand', lines, (id, on) => problem.have(id, on)) : nothing;
}

const listed = (word, list, ordered) =>
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

function doing({ now, limits, home, until, sure, why, source, feared, other }) {
  return html`
    ${listed('trouble.now', now, true)} ${listed('trouble.limits', limits)}
    ${listed('trouble.until', until)} ${listed('trouble.home', home)}
    <section>
      <h2>${t('trouble.sure', { sure: t(`sure.${sure}`) })}</h2>
      ${feared && !other ? html`<p>${t('trouble.open')}</p>` : nothing}
      ${why ? html`<p>${t(why)}</p>` : nothing} ${source ? html`<p>${t(source)}</p>` : nothing}
      <p>${t('trouble.defer')}</p>
    </section>
  `;
}

/** What one can do with it in the job one comes from. */
function inJob(problem) {
  const { job, step } = problem.state;
  const back = step ? address('job', job, 'step', step) : address('job', job);
  return html`<div class="bar">
    <button
      type="button"
      class="main"
      ?disabled=${!problem.verdict?.ok || problem.kept}
      @click=${() => problem.addToJob()}
    >
      ${t(problem.kept ? 'trouble.kept' : 'trouble.keep')}
    </button>
    <a class="button quiet" href=${back}>${t('trouble.back-to-job')}</a>
  </div>`;
}
