import { html, nothing } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { t, text } from '../words/catalogue.js';
import { radios } from '../ui/choice.js';
import { findings } from '../ui/findings.js';
import { amend, levelSlider } from './level.js';
import { oilOf, soFar } from './so-far.js';

/** The readings that a step asks for. */
export function asks(job, step, control) {
  if (!step.asks) return nothing;
  return html`<section class="asks" aria-label=${t('job.readings')}>
    ${step.asks.map((ask) => (ask.choice ? pick(job, step, ask, control) : type(job, step, ask, control)))}
  </section>`;
}

/** What was kept for this reading at this step. */
function kept(job, step, ask) {
  const own = (job.state.readings ?? []).filter(
    (r) => r.step === step.id && r.what === ask.what && (r.of ?? '') === (ask.of ?? ''),
  );
  return own.map(
    (r) => html`<p class="kept">✓ ${t('job.kept', { value: r.texts.map(text).join(' · ') })}</p>`,
  );
}

const event = (step, ask, value) => ({
  kind: 'reading',
  step: step.id,
  what: ask.what,
  of: ask.of,
  value,
});

/** The words of the last reading, of which the last is a choice. */
const lastOf = (job, step, ask) =>
  (job.state.readings ?? []).findLast(
    (r) => r.what === ask.what && r.step === step.id && (r.of ?? '') === (ask.of ?? ''),
  )?.texts ?? [];

function pick(job, step, ask, control) {
  const last = lastOf(job, step, ask);
  const add = (value, word) => control.add(event(step, ask, value), t('job.kept', { value: word }));
  const choose = (c) => add(c, t(`${ask.what}.${c}`));
  const share = last.length > 1 ? parseFloat(last[0]) : undefined;
  const oil = oilOf(job, ask);
  // Several oils may be asked for at one step.
  const several = step.asks.filter(({ what }) => what === ask.what).length > 1;
  return html`${several ? html`<h2>${t(oil.role)}</h2>` : nothing}
  ${ask.gauge ? levelSlider(ask, `level-${step.id}-${ask.of}`, share, control, (value) => event(step, ask, value)) : nothing}
  ${share === undefined ? nothing : html`<p class="kept">✓ ${t('job.kept', { value: t('level.share', { share }) })}</p>`}
  ${radios(`ask.${ask.what}`, ask.what, last.at(-1)?.split('.')[1], ask.choice, choose, ask.of)}
  ${findings(control.findingsAbout((e) => same(ask, e)))}
  ${step.after || step.asks.some(({ what }) => what === 'poured') ? amend(oil) : nothing}`;
}

const same = (ask, e) => e.kind === 'reading' && e.what === ask.what && e.of === ask.of;

function type(job, step, ask, control) {
  const id = `ask-${step.id}-${ask.what}`;
  const typed = (field) => event(step, ask, field.value);
  const input = ({ target }) => control.type(target, () => typed(target), target.value);
  const submit = (e) => {
    e.preventDefault();
    const field = e.target.elements.value;
    return control.saveTyped(field, typed(field), t('job.kept', { value: field.value }));
  };
  return html`<form class="ask" @submit=${submit} novalidate>
    <label for=${id}
      >${t(`ask.${ask.what}`)} <small>${t('ask.unit', { unit: ask.unit })}</small></label
    >
    <div class="entry">
      <input
        id=${id}
        name="value"
        inputmode="text"
        enterkeyhint="done"
        autocomplete="off"
        autocapitalize="none"
        maxlength="40"
        @input=${input}
        ${ref((field) => field && control.restore(field, () => typed(field)))}
      />
      <button type="submit">${t('job.keep')}</button>
    </div>
    ${findings(control.findingsAbout((e) => same(ask, e)))} ${kept(job, step, ask)}
    ${soFar(job, ask)}
  </form>`;
}
