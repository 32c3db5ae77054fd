import { html, nothing } from 'lit-html';
import { loadLimits } from '../core/limits.js';
import { stayAwake } from '../phone/lock.js';
import { offline } from '../phone/offline.js';
import { Drafts, draftsWritten, jobScope, watchDrafts } from '../store/drafts.js';
import { address } from '../ui/address.js';
import { hasWord, loadWordsOf, t, text } from '../words/catalogue.js';
import { aidLinks } from '../aid/links.js';
import { asks, keeps } from './ask.js';
import { Control } from './control.js';
import { anew } from '../ui/anew.js';
import { figureRow, largestRow } from '../ui/figure.js';
import { warning } from '../ui/findings.js';
import { outline } from '../ui/outline.js';
import { said } from '../ui/said.js';
import { Hands } from './hands.js';
import { helps } from './helps.js';
import { follow } from './follow.js';
import { look, looks } from '../look/look.js';
import { onward, stepBefore } from './moves.js';
import { note, notesOnCard } from './note.js';
import { openJob } from '../plain/open.js';
import { openJobs } from '../others/open-jobs.js';
import { page } from './page.js';
import { takePhoto } from '../photos/take.js';
import { letGo } from '../photos/photos.js';
import { allSteps, closing, redo } from './steps.js';
import { stillOpen } from '../still-open/strip.js';
import { tally } from './tally.js';
import { timers } from './timers.js';
import { loadBegun, stops, wrong } from '../trouble/in-job.js';
import { own } from '../site/own.js';
import { visitBeside } from '../visit/from-job.js';

/**
 * A job under way. "#/job/ID" shows the next step, "#/job/ID/step/STEP" any
 * step, "#/job/ID/steps" all of them; "#/job/ID/page" is the whole job on one page,
 * "#/job/ID/stage/STAGE" one of its stages.
 */
export async function job([id, view, stepId], app) {
  await Promise.all([...['hands', 'keep'].map(loadWordsOf), loadLimits()]);
  const { job, plain } = await openJob(id, app);
  const forms = await looks();
  const screen = {
    name: 'job',
    tab: 'bikes',
    title: job?.name ?? plain?.title ?? t('nav.bikes'),
  };
  if (!job) return Object.assign(screen, plain);
  const drafts = await Drafts.open(jobScope(id));
  await loadBegun(drafts.all());
  const control = new Control(job, app, drafts);
  control.forms = forms;
  control.move([id, view, stepId]);
  screen.title = control.title;
  control.hands = new Hands(control);
  openJobs.hear(job);
  screen.shows = () => control.shows();
  control.visit = visitBeside(job, app);
  screen.holds = (parts) => control.holds(parts);
  screen.move = (parts) => control.move(parts);
  screen.draw = () => draw(job, control);
  const unfollow = follow(job, control, app);
  const unwatch = watchDrafts(() => app.redraw());
  screen.close = () => {
    control.close();
    stayAwake(false);
    unfollow();
    unwatch();
    control.visit.close();
    letGo(job);
  };
  stayAwake(true).then((how) => {
    control.awake = how;
    app.redraw();
  });
  return screen;
}

function draw(job, control) {
  if (control.view === 'steps') return allSteps(job, control);
  if (control.view === 'page' || control.view === 'stage') return page(job, control);
  const step = job.step(control.stepId ?? job.state.next);
  if (!step) return closing(job, control);
  // What was typed or opened at one step does not appear at the next.
  return anew(step.id, oneStep(job, step, control));
}

/**
 * One step. Its first screenful is the step itself: title, figures, cautions, what to do
 * and what is entered; then the large button, and only then what may help.
 */
function oneStep(job, step, control) {
  const done = job.isDone(step.id);
  const warned = job.state.openAt?.some((at) => at.step === step.id);
  const figures = step.figures?.map((f, n) => (n ? figureRow(f) : largestRow(f))) ?? [];
  const list = figures.length ? html`<dl class="figures">${figures}</dl>` : nothing;
  const warns = [
    ...(job.state.warns ?? []).filter((at) => at.step === step.id),
    ...(step.warns ?? []),
  ];
  // Where sides stand beside each other, the figures are on the one that has the room.
  const bare = !warned && !warns.length && !step.notes?.length;
  return html`<article
    class="step"
    data-step=${step.id}
    ?data-done=${done}
    ?data-ready=${control.ready}
  >
    ${told(job)} ${control.visit.draw()} ${stops(job, control)}
    <div class="sides">
      <div>
        ${head(job, step, warned)}
        <h1 tabindex="-1">
          ${done ? html`<span aria-label=${t('job.is-done')}>✓</span> ` : nothing}${t(step.word, step.values)}
        </h1>
        <div class="mind">
          ${warned ? stillOpen(job, step.id) : nothing} ${warns.map(warning)} ${notesOnCard(step)}
        </div>
        ${bare ? list : nothing}
      </div>
      <div>
        ${bare ? nothing : list}
        <div class="act">
          <p class="do">${t(`${step.word}.do`, step.values)}</p>
          ${more(step)} ${tally(job, step, control)} ${timers(job, step, control)}
          ${look(job, step, control)} ${asks(job, step, control)} ${takes(step)}
          ${said(
            '',
            control.findingsAbout(({ kind }) => kind === 'done' || kind === 'undo'),
          )}
        </div>
      </div>
    </div>
    ${actions(job, step, done, control)} ${rest(job, step, control)}
  </article>`;
}

/** What the step wants in the hand, in a line. */
const takes = ({ takes: list = [] }) =>
  list.length
    ? html`<p class="wants">
        <strong>${t('job.take')}</strong>
        ${list.map(({ word, values }) => t(word, values)).join(' · ')}
      </p>`
    : nothing;

/** What an instruction says beyond the acts. */
const more = ({ word, values }) =>
  hasWord(`${word}.more`)
    ? html`<details class="do-more">
        <summary>${t('job.more')}</summary>
        <p>${t(`${word}.more`, values)}</p>
      </details>`
    : nothing;

/** Where the job stands: its oils as they are now, stage and step; and what is open, or whose it is. */
function head(job, step, warned) {
  const { oils = [], open } = job.state;
  const { steps } = job.plan;
  const { layout, circuits = [] } = job.record.card ?? {};
  const left = circuits.map(({ role }) => [role, 1]); // what is not changed today stays in
  const today = oils.map(({ role, full = 0 }) => [role.split('.')[1], full]);
  const fill = Object.fromEntries([...left, ...today]);
  return html`<header class="bar head">
    <a href=${address('job', job.record.id, 'steps')} class="all">
      ${outline(layout, { fill })}
      <span>
        <strong>${t(`stage.${step.stage}`)}</strong>
        <small>${t('job.step', { number: steps.indexOf(step) + 1, steps: steps.length })}</small>
      </span>
      <span class="hidden">${t('job.all-steps')}</span>
    </a>
    ${open || warned ? nothing : html`<span class="where">${text(job.name)}</span>`}
    ${warned ? nothing : stillOpen(job)}
  </header>`;
}

/** What helps at a step, and what may be told of it, below the large button. */
const rest = (job, step, control) => html`
  ${step.must ? html`<p class="must">◉ ${t('job.must')}</p>` : nothing}
  <div class="at-hand">
    ${control.hands.draw()} ${wrong(job, step, control.drafts.all())} ${note(job, step, control)}
    ${takePhoto(job, step, control)}
  </div>
  ${helps(step, job.state)}
  <details class="why">
    <summary>${t('job.why')}</summary>
    <p>${t(`${step.word}.why`, step.values)}</p>
  </details>
  ${aidLinks({ job: job.record.id, step: step.id })}
  <p class="awake">${t(own(awake, control.awake) ?? '')} ${kept(control)}</p>
`;

/** What one should know of the job as a whole, in a quiet line each. */
const told = (job) => html`
  ${offline.state.updatedElsewhere ? html`<p class="kept">${t('job.updated-elsewhere')}</p>` : nothing}
  ${
    odd(job)
      ? html`<p class="kept">
          <a href=${address('record', job.record.id)}>${t('job.see-record')}</a>
        </p>`
      : nothing
  }
`;

/** Whether something in the record of the job is not as it was written here. */
const odd = ({ state, beside = [] }) =>
  state.disputed?.length || state.unread || beside.some(({ kind }) => kind === 'job');

const awake = { lock: 'job.awake', film: 'hands.film', '': 'job.asleep' };

/** What is true of all that was entered and typed in this job. */
function kept({ app, drafts }) {
  if (app.trouble) return nothing;
  if (!draftsWritten()) return t('draft.pending');
  return t(drafts.all().length ? 'job.drafted' : 'job.saved');
}

/**
 * What a button does that leads on: only a finger that came down on what has stood there
 * for a moment means it. The second of a double tap meets another step.
 */
const meant = (control, act) => ({
  down: () => (control.down = control.ready),
  click: ({ detail }) => {
    const ready = detail === 0 || (control.down ?? control.ready); // a key has no finger
    control.down = undefined;
    if (ready) act();
  },
});

/** At a gate at which nothing was looked at: whether that was meant. */
function brake(job, step, control) {
  const on = meant(control, () => control.done(step, true));
  return html`<div class="actions brake two-ways">
    <p class="progress" role="alert">${t('job.brake')}</p>
    <button type="button" class="main" @click=${() => control.lookFirst()}>
      ${t('job.brake.look')}
    </button>
    <button type="button" class="quiet" @pointerdown=${on.down} @click=${on.click}>
      ${t('job.brake.on')}
    </button>
  </div>`;
}

/** The bar under the thumb: on, back, and the last thing taken back. */
function actions(job, step, done, control) {
  if (control.brake) return brake(job, step, control);
  const on = meant(control, () => onward(control, step));
  const before = stepBefore(job, step);
  const value = done ? '' : keeps(job, step, control);
  return html`<div class="actions">
    ${job.state.redo ? html`<p class="progress">${redo(job, control)}</p>` : nothing}
    <button
      type="button"
      class="quiet"
      ?disabled=${!job.state.lastID}
      @click=${() => control.undo()}
    >
      ${t('job.undo')}
    </button>
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
      class=${value ? 'main keeps' : 'main'}
      @pointerdown=${on.down}
      @click=${on.click}
    >
      ${value ? t('job.done.at', { value }) : t(done ? 'job.next' : 'job.done')}
    </button>
  </div>`;
}
