import { html, nothing } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { limits } from '../core/limits.js';
import { t, text } from '../words/catalogue.js';
import { radios } from '../ui/choice.js';
import { draftMark } from '../ui/draft-mark.js';
import { said, tied } from '../ui/said.js';
import { fitted, roomFor } from '../ui/letters.js';
import { amend, levelSlider } from './level.js';
import { oilOf, soFar } from './so-far.js';

/** The readings that a step asks for. */
export function asks(job, step, control) {
  if (!step.asks) return nothing;
  return html`<section class="asks" aria-label=${t('job.readings')}>
    ${step.asks.map((ask) => (ask.choice ? pick(job, step, ask, control) : type(job, step, ask, control)))}
  </section>`;
}

/** The readings of this that were kept at this step. */
const keptHere = (job, step, ask) =>
  (job.state.readings ?? []).filter(
    (r) => r.step === step.id && r.what === ask.what && (r.of ?? '') === (ask.of ?? ''),
  );

function kept(job, step, ask) {
  return keptHere(job, step, ask).map(
    (r) =>
      html`<p class="kept">
        ✓ ${t('job.kept', { value: r.texts.map(text).join(' · ') })}
        ${r.manners?.map((word) => html`<small>${t(word)}</small> `)}
      </p>`,
  );
}

const mostOnButton = 12; // letters: "21.4 lbf·ft" and one more

/**
 * What Done keeps of a torque, as typed, in the unit that the field names where none is
 * typed, or as it was kept at the step; empty for none.
 */
export function keeps(job, step, control) {
  const ask = step.asks?.find(({ what }) => what === 'torque');
  if (!ask) return '';
  const typed = String(control.drafts.get(fieldOf(step, ask)) ?? '').trim();
  const bare = typed && !/\p{L}/u.test(typed);
  const value = bare ? `${typed} ${ask.unit}` : typed || (lastOf(job, step, ask).texts?.[0] ?? '');
  return value.length > mostOnButton ? '' : value;
}

const fieldOf = (step, ask) => `ask-${step.id}-${ask.what}${ask.of ? `-${ask.of}` : ''}`;

const event = (step, ask, value) => ({
  kind: 'reading',
  step: step.id,
  what: ask.what,
  of: ask.of,
  value,
});

/** What was answered last at this step. */
const lastOf = (job, step, ask) => keptHere(job, step, ask).at(-1) ?? {};

function pick(job, step, ask, control) {
  const { choice, share } = lastOf(job, step, ask);
  const add = (value, word) => control.add(event(step, ask, value), t('job.kept', { value: word }));
  const choose = (c) => add(c, t(`${ask.what}.${c}`));
  const oil = oilOf(job, ask);
  const id = fieldOf(step, ask);
  const found = control.findingsAbout((e) => same(ask, e));
  // Several oils may be asked for at one step.
  const several = step.asks.filter(({ what }) => what === ask.what).length > 1;
  return html`${several ? html`<h2>${t(oil.role)}</h2>` : nothing}
  ${radios(`ask.${ask.what}`, ask.what, choice, ask.choice, choose, ask.of, found.length ? `${id}-said` : '')}
  ${ask.gauge ? levelSlider(ask, `level-${step.id}-${ask.of}`, share, control, (value) => event(step, ask, value)) : nothing}
  ${share === undefined ? nothing : html`<p class="kept">✓ ${t('job.kept', { value: t('level.share', { share }) })}</p>`}
  ${said(id, found)} ${ask.amends ? amend(oil) : nothing}`;
}

const same = (ask, e) => e.kind === 'reading' && e.what === ask.what && e.of === ask.of;

function type(job, step, ask, control) {
  const id = fieldOf(step, ask);
  const typed = (field) => event(step, ask, field.value);
  const found = control.findingsAbout((e) => same(ask, e));
  const input = ({ target }) => {
    control.type(target, () => typed(target), fitted(target));
    if (ask.what === 'torque') control.app.redraw(); // the large button says what it keeps
  };
  const asCard = () =>
    control.add(
      { ...event(step, ask, ask.card), manner: 'as-card' },
      t('job.kept', { value: ask.card }),
    );
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
        ${tied(id, found)}
        @input=${input}
        ${ref((field) => field && control.restore(field, () => typed(field)))}
      />
      <button type="submit">${t('job.keep')}</button>
    </div>
    ${
      ask.card
        ? html`<button type="button" class="quiet as-card" @click=${asCard}>
            ${t('page.as-card', { value: ask.card })}
          </button>`
        : nothing
    }
    ${roomFor(id, limits.reading)} ${draftMark(control.standing(id))} ${said(id, found)}
    ${kept(job, step, ask)} ${soFar(job, ask)}
  </form>`;
}
