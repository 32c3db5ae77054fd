import { html, nothing } from 'lit-html';
import { keyed } from 'lit-html/directives/keyed.js';
import { keepAwake } from '../device.js';
import { Job } from '../job.js';
import { address } from '../router.js';
import { loadWordsOf, t } from '../words.js';
import { asks } from './ask.js';
import { Control } from './control.js';
import { figureRow, findings, warning } from './figure.js';
import { Hands } from './hands.js';
import { helps } from './helps.js';
import { follow } from './job-follow.js';
import { look, looks } from './look.js';
import { onward, stepBefore } from './moves.js';
import { note } from './note.js';
import { takePhoto } from './photo-take.js';
import { letGo } from './photos.js';
import { allSteps, closing } from './steps.js';
import { stick } from './stick.js';
import { timerLines, timers, watchTimers } from './timers.js';
import { stops, wrong } from './trouble-job.js';

/**
 * A job under way. "#/job/ID" shows the next step, "#/job/ID/step/STEP" any
 * step, "#/job/ID/steps" all of them.
 */
export async function job([id, view, stepId], app) {
  await Promise.all(['hands', 'keep'].map(loadWordsOf));
  const work = await app.keep(() => Job.open(id));
  const forms = await looks();
  const screen = { name: 'job', tab: 'bikes', title: work?.record.name ?? t('nav.bikes') };
  if (!work?.plan || !work.state) {
    screen.draw = () =>
      html`<h1 tabindex="-1">${t(work ? 'core.failed' : 'job.unknown')}</h1>
        ${findings(work?.findings)} ${back()}`;
    return screen;
  }
  const control = new Control(work, app);
  control.forms = forms;
  control.move([id, view, stepId]);
  control.hands = new Hands(control);
  watchTimers(work, app);
  screen.holds = (parts) => control.holds(parts);
  screen.move = (parts) => control.move(parts);
  screen.draw = () => draw(work, control);
  const unfollow = follow(work, control, app);
  screen.close = () => {
    control.hands.close();
    keepAwake(false);
    unfollow();
    letGo(work);
  };
  keepAwake(true).then((how) => {
    control.awake = how;
    app.redraw();
  });
  return screen;
}

const back = () => html`<p><a class="button" href=${address('bikes')}>${t('nav.back')}</a></p>`;

function draw(work, control) {
  if (control.view === 'steps') return allSteps(work, control);
  const step = work.step(control.stepId ?? work.state.next);
  if (!step) return closing(work, control);
  // Keyed: what was typed or opened at one step does not appear at the next.
  return keyed(step.id, oneStep(work, step, control));
}

function oneStep(work, step, control) {
  const { steps } = work.plan;
  const number = steps.indexOf(step) + 1;
  const done = work.isDone(step.id);
  return html`
    <header class="bar">
      <a href=${address('job', work.record.id, 'steps')} class="all">${t('job.all-steps')}</a>
      <span class="where">${work.record.name}</span>
    </header>
    ${timerLines(work, step)} ${stick(work, step.stage)} ${stops(work, control)}
    <article class="step" ?data-done=${done}>
      <h1 tabindex="-1">
        ${done ? html`<span aria-label=${t('job.is-done')}>✓</span> ` : nothing}${t(step.word, step.values)}
      </h1>
      ${work.state.warnAt?.includes(step.id) ? work.state.warns.map(warning) : nothing}
      ${(step.warns ?? []).map(warning)}
      <p class="do">${t(`${step.word}.do`, step.values)}</p>
      ${timers(work, step, control)}
      ${step.figures ? html`<dl class="figures">${step.figures.map(figureRow)}</dl>` : nothing}
      ${step.must ? html`<p class="must">◉ ${t('job.must')}</p>` : nothing} ${control.hands.draw()}
      ${look(work, step, control)} ${asks(work, step, control)} ${helps(step, work.state)}
      ${wrong(work, step)}
      <details class="why">
        <summary>${t('job.why')}</summary>
        <p>${t(`${step.word}.why`, step.values)}</p>
      </details>
      ${note(work, step, control)} ${takePhoto(work, step, control)}
      ${findings(control.toldAbout(({ kind }) => kind === 'done' || kind === 'undo'))}
      <p class="awake">
        ${t(awake[control.awake])} ${control.app.trouble ? nothing : t('job.saved')}
      </p>
    </article>
    ${actions(work, step, number, done, control)}
  `;
}

const awake = { lock: 'job.awake', film: 'hands.film', '': 'job.asleep' };

/** Acts on the first tap only: the second of a double tap meets another step. */
const once = (event, act) => event.detail < 2 && act();

/** The bar under the thumb: how far the job is, back, on, and the last thing taken back. */
function actions(work, step, number, done, control) {
  const before = stepBefore(work, step);
  return html`<div class="actions">
    <p class="progress">
      <progress
        aria-hidden="true"
        max=${work.plan.steps.length}
        .value=${work.state.done?.length ?? 0}
      ></progress>
      ${t('job.step', { number, steps: work.plan.steps.length })}
    </p>
    <button
      type="button"
      class="quiet"
      aria-label=${t('job.previous')}
      ?disabled=${!before}
      @click=${() => control.show(before.id)}
    >
      ‹
    </button>
    <button
      type="button"
      class="main"
      @click=${(event) => once(event, () => onward(control, step))}
    >
      ${t(done ? 'job.next' : 'job.done')}
    </button>
    <button
      type="button"
      class="quiet"
      ?disabled=${!work.state.lastID}
      @click=${() => control.undo()}
    >
      ${t('job.undo')}
    </button>
  </div>`;
}
