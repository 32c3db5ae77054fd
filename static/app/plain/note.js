import { html } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { limits } from '../core/limits.js';
import { Drafts, draftsWritten, jobScope } from '../store/drafts.js';
import { draftMark } from '../ui/draft-mark.js';
import { fitted, roomFor } from '../ui/letters.js';
import { t } from '../words/catalogue.js';

/** @import { Job } from '../store/job.js' */

const id = 'plain-note';

/** Room for a note in a job that the core can't work out. */
export class PlainNote {
  #job;
  #app;
  #drafts;
  #restored = false;

  /**
   * @param {Job} job
   * @param {any} app
   * @param {Drafts} drafts
   */
  constructor(job, app, drafts) {
    this.#job = job;
    this.#app = app;
    this.#drafts = drafts;
  }

  /**
   * @param {Job} job
   * @param {any} app
   */
  static async open(job, app) {
    return new PlainNote(job, app, await Drafts.open(jobScope(job.record.id)));
  }

  /** @param {SubmitEvent} event */
  async #save(event) {
    event.preventDefault();
    const field = /** @type {any} */ (event.target).elements.text;
    if (!field.value.trim()) return;
    const note = { kind: /** @type {const} */ ('note'), text: field.value };
    const keys = [this.#drafts.key(id)];
    const found = await this.#app.attempt(
      () => this.#job.add(note, undefined, keys),
      'job.not-saved',
    );
    if (!found || found.some(({ grade }) => grade === 'refuse')) return;
    if (field.value === note.text) {
      this.#drafts.drop(id);
      field.value = '';
    } else this.#drafts.put(id, field.value); // it was typed meanwhile
    this.#app.say(t('job.note.kept'));
  }

  #standing() {
    if (this.#drafts.get(id) === undefined) return '';
    return draftsWritten() ? 'written' : 'pending';
  }

  /** @param {string} text */
  #type(text) {
    const before = this.#standing();
    if (text.trim()) this.#drafts.put(id, text);
    else this.#drafts.drop(id);
    if (before !== this.#standing()) this.#app.redraw();
  }

  /** Puts back what stood there when the screen was left; lit calls it at each drawing. */
  #restore(field) {
    if (!this.#restored) field.value = this.#drafts.get(id) ?? '';
    this.#restored = true;
  }

  draw() {
    return html`<form class="ask" @submit=${(event) => this.#save(event)}>
      <label for=${id}>${t('job.note')}</label>
      <textarea
        id=${id}
        name="text"
        rows="3"
        @input=${({ target }) => this.#type(fitted(target))}
        ${ref((field) => field && this.#restore(field))}
      ></textarea>
      ${roomFor(id, limits.note)} ${draftMark(this.#standing())}
      <p><button type="submit">${t('job.note.save')}</button></p>
    </form>`;
  }
}
