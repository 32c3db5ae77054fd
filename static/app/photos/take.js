import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { askToKeep } from '../store/promise.js';
import { download } from '../phone/share.js';
import { shrink } from './shrink.js';
import { t } from '../words/catalogue.js';
import { photos, shelfOf } from './photos.js';

// What goes on at the steps of a job: {what, said, waiting}, by job and step.
const states = new WeakMap();

function stateOf(job, step) {
  if (!states.has(job)) states.set(job, new Map());
  const steps = states.get(job);
  if (!steps.has(step.id)) steps.set(step.id, { what: step.photo, said: '', waiting: null });
  return steps.get(step.id);
}

/** The photos of a step, and a way to take one more. */
export function takePhoto(job, step, control) {
  const { app } = control;
  const state = stateOf(job, step);
  const own = (job.state?.photos ?? []).filter((photo) => photo.step === step.id);
  return html`${photos(job, own, app)}
    <details class="take">
      <summary class="button quiet">${t('photo.take')}</summary>
      ${limits.photos ? whatItShows(state, step) : nothing}
      <div class="entry">
        ${pictureFrom('camera', step, (file) => take(file, job, step, control))}
        ${pictureFrom('choose', step, (file) => take(file, job, step, control))}
      </div>
      <p class="kept">${t('photo.private')}</p>
    </details>
    <p role="status" class="told">${state.said ? t(state.said) : nothing}</p>
    ${state.waiting ? waiting(job, step, control) : nothing}`;
}

function whatItShows(state, step) {
  const id = `photo-what-${step.id}`;
  return html`<p class="ask">
    <label for=${id}>${t('photo.what')}</label>
    <select id=${id} @change=${({ target }) => (state.what = target.value)}>
      ${limits.photos?.map(
        (kind) =>
          html`<option value=${kind} ?selected=${kind === state.what}>
            ${t(`photo.what.${kind}`)}
          </option>`,
      )}
    </select>
  </p>`;
}

/** A way to take or choose a picture; `then` is called with its file. */
export function pictureFrom(way, step, then) {
  const id = `photo-${way}-${step.id}`;
  const picked = ({ target }) => {
    const [file] = target.files;
    target.value = '';
    if (file) then(file);
  };
  const camera = way === 'camera';
  return html`<span class="file">
    <input
      id=${id}
      type="file"
      accept="image/*"
      capture=${camera ? 'environment' : nothing}
      @change=${picked}
    />
    <label for=${id} class=${camera ? 'button' : 'button quiet'}
      >${t(camera ? 'photo.camera' : 'photo.choose')}</label
    >
  </span>`;
}

async function take(file, job, step, control) {
  const state = stateOf(job, step);
  if (state.said === 'photo.keeping') return;
  say('photo.keeping');
  try {
    const blob = await shrink(file);
    state.waiting = { what: state.what, blob, bytes: blob.size };
  } catch {
    return say('photo.unreadable');
  }
  await save(job, step, control);

  function say(word) {
    state.said = word;
    control.app.redraw();
  }
}

/** Keeps the picture that waits; what can't be kept goes on waiting. */
async function save(job, step, control) {
  const state = stateOf(job, step);
  const picture = state.waiting;
  const event = { kind: 'photo', step: step.id, what: picture.what };
  const kept = await control.add(event, t('photo.kept'), picture);
  state.said = '';
  if (kept) {
    state.waiting = null;
    askToKeep();
    await shelfOf(job, control.app).load();
  } else control.app.redraw();
}

function waiting(job, step, control) {
  const state = stateOf(job, step);
  const file = () => new File([state.waiting.blob], 'photo.jpg', { type: 'image/jpeg' });
  const drop = () => {
    state.waiting = null;
    control.app.redraw();
  };
  if (state.said === 'photo.keeping') return nothing;
  return html`<div class="message">
    <p>${t('photo.waiting')}</p>
    <p class="entry">
      <button type="button" @click=${() => save(job, step, control)}>${t('photo.again')}</button>
      <button type="button" class="quiet" @click=${() => download(file())}>
        ${t('photo.as-file')}
      </button>
      <button type="button" class="quiet" @click=${drop}>${t('photo.dropped')}</button>
    </p>
  </div>`;
}
