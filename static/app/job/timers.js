import { html, nothing } from 'lit-html';
import { arm, armed, hasTones } from '../phone/bell.js';
import { ago, digits, left } from '../others/countdown.js';
import { t, text } from '../words/catalogue.js';
import { clock } from '../words/dates.js';
import { standing } from '../ui/figure.js';
import { icon } from '../ui/icon.js';

const running = (job, step, { what }) =>
  job.state.timers?.find((r) => r.step === step.id && r.what === what);

/** The timers of a step: to be started, counting, or over. */
export const timers = (job, step, control) =>
  (step.timers ?? []).map((timer) => {
    const run = running(job, step, timer);
    const state = !run ? 'ready' : left(run) > 0 ? 'counts' : 'over';
    return html`<section class="timer" data-over=${state === 'over'} aria-label=${t(timer.name)}>
      <p class="name">${t(timer.name)}</p>
      ${parts[state](step, timer, run, control)}
    </section>`;
  });

const parts = {
  ready: (step, timer, _, control) =>
    html`<button type="button" @click=${() => start(step, timer, control)}>
        <span aria-hidden="true">▶</span>
        <span>${t('timer.start', { length: text(timer.texts[0]) })}</span>
      </button>
      ${standing(timer)}`,

  counts: (step, timer, run, control) => {
    const ms = left(run);
    const share = Math.min(ms / (timer.seconds * 1000), 1);
    return html`<p class="counting">
        <span class="digits" role="timer">${digits(ms)}</span>
        ${t('timer.left', { clock: clock(run.until) })}
      </p>
      <progress aria-hidden="true" max="1" .value=${share}></progress>
      ${silence()}
      <button
        type="button"
        class="quiet"
        @click=${() => end(step, timer, control, 'timer.stopped')}
      >
        ${t('timer.stop')}
      </button>`;
  },

  over: (step, timer, run, control) => {
    const [word, count] = ago(-left(run));
    return html`<p class="up">${icon('bell')} ${t('timer.over')}</p>
      <p>${t('timer.ago', { ago: t(word, { count }) })}</p>
      <div class="answers">
        <button type="button" @click=${() => end(step, timer, control, 'timer.answered')}>
          ${t('timer.seen')}
        </button>
        <button type="button" class="quiet" @click=${() => start(step, timer, control)}>
          ${t('timer.again', { length: text(timer.texts[0]) })}
        </button>
      </div>`;
  },
};

/** Why a timer may end without a sound. */
function silence() {
  if (!hasTones()) return html`<p class="kept">${t('timer.no-sound')}</p>`;
  return armed() ? nothing : html`<p class="kept">${t('timer.mute')}</p>`;
}

function start(step, { what, seconds, texts }, control) {
  arm(); // within the tap, before anything is waited for
  const until = new Date(Date.now() + seconds * 1000).toISOString();
  const event = { kind: 'timer', step: step.id, what, until };
  return control.add(event, t('timer.started', { length: text(texts[0]) }));
}

/** Ends a timer, and those that it had replaced and that would come back. */
async function end(step, timer, control, said) {
  for (let run; (run = running(control.job, step, timer));)
    if (!(await control.add({ kind: 'undo', of: run.id }, t(said)))) return;
}
