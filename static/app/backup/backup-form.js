import { html, nothing } from 'lit-html';
import { makeBackup } from './write.js';
import { shareable } from '../phone/share.js';
import { handOut } from './hand-out.js';
import { offerRescue } from '../site/rescue.js';
import { saveSetting } from '../store/store.js';
import { putSaved } from '../store/whole.js';
import { t } from '../words/catalogue.js';
import { size } from '../words/size.js';

/** @import { Values } from '../words/catalogue.js' */

// What a job of 30 events takes in a backup, measured with a sample card; pictures
// take a third more in plain text, where they stand in base64.
const bytesOfJob = { plain: 8000, zipped: 1000 };

const probe = (ending, type) => new File(['x'], ['x', ending].join('.'), { type });

/** Some phones share text only: there the whole file is plain text. */
export const textOnly = () =>
  !shareable(probe('gz', 'application/gzip')) && shareable(probe('txt', 'text/plain'));

/** Making a backup and handing it out. */
export class BackupForm {
  #app;
  #then;
  #photos = true;
  #persons = true;
  /** @type {[word: string, values?: Values] | null} */
  #said = null;
  /** @type {File | null} */
  #file = null;
  #made = '';
  /** @type {import('../store/records.d.ts').Saved[]} what of each job is in the file */
  #holds = [];
  #busy = false;

  /** `then` is run when a backup was handed out. */
  constructor(app, then) {
    this.#app = app;
    this.#then = then;
  }

  #say(word, values) {
    this.#said = word ? [word, values] : null;
    this.#app.redraw();
  }

  async #make() {
    if (this.#busy) return;
    if (!globalThis.crypto?.subtle) {
      // Over plain HTTP nothing can be sealed: the records go out as they lie in the store.
      offerRescue(t('keep.insecure'));
      return this.#say('keep.insecure');
    }
    this.#busy = true;
    this.#file = null;
    const made = new Date().toISOString();
    const holds = [];
    const note = (id, events) => holds.push({ id, events, made });
    const progress = ({ jobs, photos }) =>
      this.#say('keep.making', {
        jobs: t('keep.making.jobs', { count: jobs }),
        photos: t('keep.making.photos', { count: photos }),
      });
    progress({ jobs: 0, photos: 0 });
    try {
      const blob = await makeBackup({
        made,
        photos: this.#photos,
        persons: this.#persons,
        plain: textOnly(),
        progress,
        note,
      });
      const ending = blob.type === 'text/plain' ? 'txt' : 'jsonl.gz';
      const name = `tidysump-backup-${made.slice(0, 10)}.${ending}`;
      this.#file = new File([blob], name, { type: blob.type });
      this.#made = made;
      this.#holds = holds;
      this.#busy = false;
      this.#say('keep.ready', { name, size: size(blob.size) });
    } catch {
      this.#busy = false;
      this.#say('keep.failed');
    }
  }

  async #give(way) {
    const outcome = await way(this.#file);
    if (outcome === 'keep.share-failed' || !outcome) return this.#say(outcome);
    await this.#app.attempt(async () => {
      await putSaved(this.#holds);
      await saveSetting('backup', { time: this.#made });
    });
    this.#file = null;
    await this.#then();
    this.#say(outcome);
  }

  /**
   * `held` says how many jobs and photos there are, and whether anything may tell of persons:
   * {jobs, photos, bytes, persons}.
   */
  draw({ jobs, photos, bytes, persons }) {
    const ofJobs = jobs * bytesOfJob[textOnly() ? 'plain' : 'zipped'];
    const about = ofJobs + (this.#photos ? bytes * (textOnly() ? 4 / 3 : 1) : 0);
    const tick = ({ target }) => {
      this.#photos = target.checked;
      this.#app.redraw();
    };
    return html`<p>${t('keep.out.how')}</p>
      ${
        photos
          ? html`<label class="pick">
              <input type="checkbox" .checked=${this.#photos} @change=${tick} />
              <span>${t('keep.with-photos', { count: photos, size: size(bytes) })}</span>
            </label>`
          : nothing
      }
      ${persons ? this.#whether() : nothing}
      <p>${t('keep.about', { size: size(about) })}</p>
      <p>
        <button type="button" ?disabled=${this.#busy} @click=${() => this.#make()}>
          ${t('keep.make')}
        </button>
      </p>
      <p role="status" class="told">${this.#said ? t(...this.#said) : nothing}</p>
      ${this.#file ? handOut(this.#file, (way) => this.#give(way)) : nothing}`;
  }

  /** Whether persons go with it: who hands the file on may not want that. */
  #whether() {
    const tick = ({ target }) => {
      this.#persons = target.checked;
      this.#file = null; // it was made with the others
      this.#said = null;
      this.#app.redraw();
    };
    return html`<label class="pick">
        <input type="checkbox" .checked=${this.#persons} @change=${tick} />
        <span>${t('keep.with-persons')}</span>
      </label>
      ${this.#persons ? nothing : html`<p>${t('keep.without-persons')}</p>`}`;
  }
}
