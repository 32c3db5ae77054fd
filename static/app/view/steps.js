import { html, nothing } from 'lit-html';
import { address } from '../router.js';
import { t } from '../words.js';
import { findings } from './figure.js';
import { timerLines } from './timers.js';
import { stops } from './trouble-job.js';

/** All steps of a job, stage by stage, to jump to any of them. */
export function allSteps(work, control) {
  const { stages } = work.state;
  return html`
    <header class="bar">
      <a href=${address('job', work.record.id)} class="all">${t('nav.back')}</a>
      <a href=${address('bikes')} class="all">${t('job.leave')}</a>
    </header>
    ${timerLines(work)}
    <h1 tabindex="-1">${t('job.all-steps')}</h1>
    ${stages.map(
      ({ stage }) =>
        html`<section class="stage-steps">
          <h2>${t(`stage.${stage}`)}</h2>
          <ol>
            ${work.plan.steps.filter((s) => s.stage === stage).map((s) => line(work, s))}
          </ol>
        </section>`,
    )}
    ${finish(work, control)}
  `;
}

function line(work, step) {
  const done = work.isDone(step.id);
  return html`<li>
    <a href=${address('job', work.record.id, 'step', step.id)} ?data-done=${done}>
      <span class="mark" role="img" aria-label=${t(done ? 'job.is-done' : 'job.is-open')}
        >${done ? '✓' : '○'}</span
      >
      ${t(step.word, step.values)}
    </a>
  </li>`;
}

/** What is shown when no step is left. */
export function closing(work, control) {
  return html`
    <header class="bar">
      <a href=${address('job', work.record.id, 'steps')} class="all">${t('job.all-steps')}</a>
    </header>
    ${timerLines(work)}
    <h1 tabindex="-1">${work.record.name}</h1>
    ${finish(work, control)}
  `;
}

function finish(work, control) {
  const { finished, waiting, missing = [] } = work.state;
  if (finished)
    return html`${waiting ? html`<p>${t('job.finish.then')}</p>` : nothing}
      <p>
        <a class="button" href=${address('record', work.record.id)}>${t('nav.record')}</a>
      </p>`;
  return html`<section class="finish">
    ${stops(work, control)}
    <p>
      ${missing.length ? t('job.finish.missing', { count: missing.length }) : t('job.finish.ready')}
    </p>
    <p>${t('job.finish.then')}</p>
    ${findings(control.toldAbout(({ kind }) => kind === 'finish'))}
    <button type="button" class="main" @click=${() => control.finish()}>${t('job.finish')}</button>
  </section>`;
}
