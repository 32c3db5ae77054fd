import { html, nothing } from 'lit-html';
import { jobFile } from '../backup/one-job.js';
import { download } from '../phone/share.js';
import { letGo, photos } from '../photos/photos.js';
import { takePhoto } from '../photos/take.js';
import { watchDrafts } from '../store/drafts.js';
import { address } from '../ui/address.js';
import { said } from '../ui/said.js';
import { section } from '../ui/section.js';
import { loadWordsOf, t, verbatim } from '../words/catalogue.js';
import { cut } from '../words/cut.js';
import { when } from '../words/dates.js';
import { entries } from './entries.js';
import { PlainNote } from './note.js';

/** @import { Job } from '../store/job.js' */

const parts = ['plain', 'keep', 'hands', 'bench', 'faults', 'bill', 'cards'];
const nameLetters = 40; // of a file

/** Fetches the words that entries are read with; what is missing stands there as its id. */
export const loadPlainWords = () =>
  Promise.all(parts.map((part) => loadWordsOf(part).catch(() => {})));

/**
 * A job that the core has not worked out, or cannot: what lies in the store is read as
 * it is, can be saved to a file, and notes and photos go on.
 */
class PlainReading {
  #app;
  #none;
  /** @type {PlainNote | undefined} */
  #note;

  /**
   * @param {Job | undefined} job
   * @param {boolean} none whether there is no such job, and not just none that was read
   * @param {any} app
   */
  constructor(job, none, app) {
    this.job = job;
    this.#none = none;
    this.#app = app;
  }

  /** Opens it with the words that it is drawn with. */
  static async open(job, none, app) {
    await loadPlainWords();
    const reading = new PlainReading(job, none, app);
    if (job) reading.#note = await PlainNote.open(job, app);
    return reading;
  }

  draw() {
    return this.job ? this.#reading(this.job) : this.#missing();
  }

  #missing() {
    return html`<h1 tabindex="-1">${t(this.#none ? 'job.unknown' : 'plain.not-read')}</h1>
      ${this.#none ? nothing : this.#again()}
      <p><a class="button" href=${address('record')}>${t('nav.record')}</a></p>`;
  }

  #again = () =>
    html`<button type="button" class="quiet" @click=${() => this.#app.open()}>
      ${t('plain.again')}
    </button>`;

  /** @param {Job} job */
  #reading(job) {
    const { name, record, events, findings: found } = job;
    const pictures = events.filter(({ kind }) => kind === 'photo');
    return html`
      <h1 tabindex="-1">${verbatim(name)}</h1>
      <p>${t('job.started', { date: when(record.started) })}</p>
      <section>
        <h2>${t('plain.why')}</h2>
        <p>${t('plain.found')}</p>
        ${said('', found)}
        <p>${t('plain.what')}</p>
        <p class="entry">
          <button type="button" @click=${() => this.#save(job)}>${t('plain.save')}</button>
          ${this.#again()}
        </p>
      </section>
      ${section('plain.entries', entries(job), events.length)}
      ${section('record.photos', photos(job, pictures, this.#app), pictures.length)}
      <section>
        <h2>${t('plain.add')}</h2>
        ${this.#note?.draw()} ${takePhoto(job, { id: '', photo: 'other' }, this.#control(job))}
      </section>
      <p><a class="button quiet" href=${address('record')}>${t('nav.record')}</a></p>
    `;
  }

  /**
   * What takes a photo is told only how to keep it.
   *
   * @param {Job} job
   */
  #control(job) {
    const app = this.#app;
    const add = async ({ step: _, ...event }, said, picture) => {
      const found = await app.attempt(() => job.add(event, picture), 'job.not-saved');
      const kept = Boolean(found) && !found.some(({ grade }) => grade === 'refuse');
      app.say(kept ? said : '');
      return kept;
    };
    return { app, add };
  }

  /** @param {Job} job */
  async #save(job) {
    const saved = await this.#app.attempt(async () => {
      const name = cut(job.record.name.replace(/[^\p{L}\p{N}]+/gu, '-'), nameLetters).text;
      const file = await jobFile(job.record, job.events, `tidysump-${name}.txt`);
      download(file);
      return file.name;
    }, 'plain.not-saved');
    if (saved) this.#app.say(t('plain.saved', { name: saved }));
  }
}

/**
 * The part of a screen that reads a job plainly: its title, and how it is drawn and closed.
 *
 * @param {Job | undefined} job
 * @param {boolean} none
 * @param {any} app
 */
export async function plainReading(job, none, app) {
  const reading = await PlainReading.open(job, none, app);
  const title = job ? job.name : t(none ? 'job.unknown' : 'plain.not-read');
  const unwatch = watchDrafts(() => app.redraw());
  const close = () => {
    unwatch();
    letGo(job);
  };
  return { title, draw: () => reading.draw(), close };
}
