import { html, nothing } from 'lit-html';
import { settings } from '../store/settings.js';
import { address } from '../ui/address.js';
import { t, text } from '../words/catalogue.js';
import { said } from '../ui/said.js';
import { stillOpen } from '../still-open/strip.js';
import { stops } from '../trouble/in-job.js';

/** All steps of a job, stage by stage, to jump to any of them. */
export function allSteps(job, control) {
  const { stages } = job.state;
  const typedAt = control.unentered();
  return html`
    <header class="bar">
      <a href=${address('job', job.record.id)} class="all">${t('nav.back')}</a>
      <a href=${address('bikes')} class="all"
        >${t(typedAt.size ? 'job.leave.typed' : 'job.leave')}</a
      >
    </header>
    ${stillOpen(job)} ${control.visit.draw()}
    <h1 tabindex="-1">${t('job.all-steps')}</h1>
    <p class="bar">
      <a class="all" href=${address('job', job.record.id, 'page')}>${t('page.title')}</a>
    </p>
    ${stages.map(
      ({ stage }) =>
        html`<section class="stage-steps">
          <h2>${t(`stage.${stage}`)}</h2>
          <ol>
            ${job.plan.steps.filter((s) => s.stage === stage).map((s) => line(job, s, typedAt))}
          </ol>
        </section>`,
    )}
    ${finish(job, control)}
  `;
}

function line(job, step, typedAt) {
  const done = job.isDone(step.id);
  return html`<li>
    <a href=${address('job', job.record.id, 'step', step.id)} ?data-done=${done}>
      <span class="mark" role="img" aria-label=${t(done ? 'job.is-done' : 'job.is-open')}
        >${done ? '✓' : '○'}</span
      >
      ${t(step.word, step.values)}
      ${typedAt.has(step.id) ? html`<small class="draft">✎ ${t('draft.written')}</small>` : nothing}
    </a>
  </li>`;
}

/** Takes back the undo that was the last thing to happen. */
export const redo = (job, control) =>
  job.state.redo
    ? html`<button type="button" class="quiet redo" @click=${() => control.redo()}>
        ${t('job.redo')}
      </button>`
    : nothing;

/** What is shown when no step is left. */
export function closing(job, control) {
  return html`
    <header class="bar">
      <a href=${address('job', job.record.id, 'steps')} class="all">${t('job.all-steps')}</a>
    </header>
    ${stillOpen(job)}
    <h1 tabindex="-1">${text(job.name)}</h1>
    ${redo(job, control)} ${unentered(job, control)} ${finish(job, control)}
  `;
}

/** The steps at which something is typed and not entered: closing the job would leave it there. */
function unentered(job, control) {
  const ids = control.unentered();
  const steps = job.plan.steps.filter(({ id }) => ids.has(id));
  return steps.length
    ? html`<p>${t('job.finish.drafts')}</p>
        <div class="stage-steps">
          <ol>
            ${steps.map((step) => line(job, step, ids))}
          </ol>
        </div>`
    : nothing;
}

function finish(job, control) {
  const { phase, missing = [], summary } = job.state;
  const then = summary.stop ? nothing : html`<p>${t('job.finish.then')}</p>`;
  if (phase !== 'open')
    return html`${phase === 'waiting' ? then : nothing}
      <p>
        <a class="button" href=${address('record', job.record.id)}>${t('nav.record')}</a>
      </p>
      ${settings.books ? html`<p><a class="button quiet" href=${address('books', 'job', job.record.id)}>${t('record.books')}</a></p>` : nothing}`;
  return html`<section class="finish">
    ${stops(job, control)}
    <p>
      ${missing.length ? t('job.finish.missing', { count: missing.length }) : t('job.finish.ready')}
    </p>
    ${then}
    ${said(
      '',
      control.findingsAbout(({ kind }) => kind === 'finish'),
    )}
    <button type="button" class="main" @click=${() => control.finish()}>${t('job.finish')}</button>
  </section>`;
}
