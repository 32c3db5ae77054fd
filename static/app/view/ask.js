import { html, nothing } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { t, text } from '../words.js';
import { radios } from './choice.js';
import { findings } from './figure.js';

/** The readings that a step asks for. */
export function asks(work, step, control) {
  if (!step.asks) return nothing;
  return html`<section class="asks" aria-label=${t('job.readings')}>
    ${step.asks.map((ask) => (ask.choice ? pick(work, step, ask, control) : type(work, step, ask, control)))}
  </section>`;
}

/** What was kept for this reading at this step. */
function kept(work, step, ask) {
  const own = (work.state.readings ?? []).filter(
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

function pick(work, step, ask, control) {
  const last = (work.state.readings ?? []).findLast(
    (r) => r.what === ask.what && r.step === step.id,
  )?.texts[0];
  const keep = (c) => control.add(event(step, ask, c), t('job.kept', { value: t(`level.${c}`) }));
  return html`${radios(`ask.${ask.what}`, 'level', last?.replace('@level.', ''), ask.choice, keep)}
  ${findings(control.toldAbout((e) => same(ask, e)))}`;
}

const same = (ask, e) => e.kind === 'reading' && e.what === ask.what && e.of === ask.of;

function type(work, step, ask, control) {
  const id = `ask-${step.id}-${ask.what}`;
  const typed = (field) => event(step, ask, field.value);
  const input = ({ target }) => control.type(target, () => typed(target), target.value);
  const submit = (e) => {
    e.preventDefault();
    const field = e.target.elements.value;
    return control.keepTyped(field, typed(field), t('job.kept', { value: field.value }));
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
    ${findings(control.toldAbout((e) => same(ask, e)))} ${kept(work, step, ask)}
  </form>`;
}
