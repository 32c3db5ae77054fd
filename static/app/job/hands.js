import { html, nothing } from 'lit-html';
import { canListen, Listener } from '../phone/ear.js';
import { canSpeak, hush, speak, speaking } from '../phone/voice.js';
import { spoken } from './spoken.js';
import { t } from '../words/catalogue.js';
import { icon } from '../ui/icon.js';
import { onward, stepBefore } from './moves.js';
import { own } from '../site/own.js';

/** A job without hands and eyes on the phone: read aloud, and steered by a few words. */
export class Hands {
  #control;
  #language; // in which the phone can listen by itself; undefined if it can't
  #listener;
  #reading = false; // the step, and not a word that was heard

  constructor(control) {
    this.#control = control;
    canListen().then((language) => {
      this.#language = language;
      control.app.redraw();
    });
  }

  /** The step on the screen. */
  get #step() {
    const { job, stepId, view } = this.#control;
    return view === 'steps' ? undefined : job.step(stepId ?? job.state.next);
  }

  /** Reads the step aloud, or stops. */
  read() {
    if (this.#reading) return hush();
    if (!this.#step || !canSpeak()) return;
    this.#reading = true;
    speak(spoken(this.#step, this.#control.job.state), () => {
      this.#reading = false;
      this.#control.app.redraw();
    });
    this.#control.app.redraw();
  }

  /** Listens, or stops. */
  listen(on) {
    this.#listener?.stop();
    this.#listener = undefined;
    if (on) {
      const ids = Object.keys(this.#acts);
      const words = ids.map((id) => t(id));
      const heard = (word) => this.#heard(ids[words.indexOf(word)]);
      this.#listener = new Listener(this.#language, words, heard, () => this.#lost());
    }
    this.#control.app.redraw();
  }

  #acts = {
    'hands.word.next': (step) =>
      this.#control.brake ? this.#control.done(step, true) : onward(this.#control, step),
    'hands.word.back': (step) => {
      const before = stepBefore(this.#control.job, step);
      if (before) this.#control.show(before.id);
    },
    'hands.word.undo': () => this.#control.job.state.lastID && this.#control.undo(),
    'hands.word.read': () => this.read(),
  };

  async #heard(id) {
    const step = this.#step;
    // What the phone itself says is no order.
    if (speaking() || !step) return;
    await own(this.#acts, id)?.(step);
    const { app } = this.#control;
    app.say([t('hands.heard', { word: t(id) }), app.said].filter(Boolean).join(' '));
    if (!this.#reading && canSpeak()) speak([t(this.#control.brake ? 'job.brake' : id)]);
  }

  #lost() {
    this.#listener = undefined;
    this.#control.app.say(t('hands.deaf'));
  }

  /** Stops reading: another step is shown. */
  turn() {
    if (this.#reading) hush();
  }

  /** Stops everything: the job is left. */
  close() {
    hush();
    this.#listener?.stop();
    this.#listener = undefined;
  }

  draw() {
    const read = html`<button type="button" class="quiet" @click=${() => this.read()}>
      ${icon('speaker')}
      <span>${t(this.#reading ? 'hands.reading' : 'hands.read')}</span>
    </button>`;
    const listen = html`<label class="listen">
        <input
          type="checkbox"
          .checked=${Boolean(this.#listener)}
          @change=${({ target }) => this.listen(target.checked)}
        />
        <span>${t('hands.listen')}</span>
      </label>
      <p class="kept">${t('hands.listen.why')}</p>`;
    return html`<div class="hands">
      ${canSpeak() ? read : nothing} ${this.#language ? listen : nothing}
    </div>`;
  }
}
