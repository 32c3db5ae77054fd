import { html, nothing } from 'lit-html';
import { persistRecords } from '../phone/storage.js';
import { readBackup, restore } from './restore.js';
import { loadSettings } from '../store/settings.js';
import { day } from '../words/dates.js';
import { t } from '../words/catalogue.js';
import { own } from '../site/own.js';

/** @import { Values } from '../words/catalogue.js' */

const kinds = ['jobs', 'events', 'cards', 'photos', 'settings'];

/** Restoring: a file is read and checked, shown, and only then put in. */
export class RestoreForm {
  #app;
  #then;
  /** @type {[word: string, values?: Values] | null} */
  #said = null;
  /** @type {Awaited<ReturnType<typeof readBackup>> | null} */
  #read = null;
  #busy = false;

  /** `then` is run when something was restored. */
  constructor(app, then) {
    this.#app = app;
    this.#then = then;
  }

  /** Whether it fills the screen. */
  get open() {
    return Boolean(this.#read);
  }

  #say(word, values) {
    this.#said = [word, values];
    this.#app.redraw();
  }

  async #choose(file) {
    if (this.#busy) return;
    this.#busy = true;
    this.#say('restore.checking');
    try {
      this.#read = await readBackup(file);
      this.#said = null;
    } catch (error) {
      const fault = /** @type {Error} */ (error);
      const known = fault.message.startsWith('restore.');
      this.#said = [known ? fault.message : 'restore.damaged'];
    }
    this.#busy = false;
    if (this.#read) this.#app.arrive();
    else this.#app.redraw();
  }

  async #restore() {
    if (this.#busy || !this.#read) return;
    this.#busy = true;
    const progress = (count) => this.#say('restore.doing', { count });
    progress(0);
    try {
      await restore(this.#read.backup, progress);
      this.#said = ['restore.done'];
      await loadSettings();
    } catch (error) {
      this.#said = [
        /** @type {Error} */ (error).name === 'QuotaExceededError'
          ? 'restore.full'
          : 'restore.failed',
      ];
    }
    this.#busy = false;
    this.#read = null;
    persistRecords();
    await this.#then();
    this.#app.arrive();
  }

  draw() {
    return this.#read ? this.#review(this.#read) : this.#form();
  }

  #status() {
    return html`<p role="status" class="told">${this.#said ? t(...this.#said) : nothing}</p>`;
  }

  #form() {
    const pick = ({ target }) => {
      const [file] = target.files;
      target.value = '';
      if (file) this.#choose(file);
    };
    return html`<p>${t('restore.how')}</p>
      <p class="file">
        <input id="backup-file" type="file" @change=${pick} />
        <label for="backup-file" class="button">${t('restore.choose')}</label>
      </p>
      ${this.#status()}`;
  }

  /** @param {Awaited<ReturnType<typeof readBackup>>} read */
  #review({ backup, added }) {
    const leave = () => {
      this.#read = null;
      this.#app.arrive();
    };
    const nothingNew = kinds.every((kind) => !own(added, kind));
    return html`<h1 tabindex="-1">${t('restore.title')}</h1>
      <p>${t('restore.whole', { date: day(backup.made) })}</p>
      <table class="holds">
        <thead>
          <tr>
            <td></td>
            <th scope="col">${t('restore.holds')}</th>
            <th scope="col">${t('restore.adds')}</th>
          </tr>
        </thead>
        <tbody>
          ${kinds.map(
            (kind) =>
              html`<tr>
                <th scope="row">${t(`restore.${kind}`)}</th>
                <td>${own(backup.counts, kind)}</td>
                <td>${own(added, kind)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
      ${nothingNew ? html`<p>${t('restore.nothing-new')}</p>` : nothing}
      <p>${t('restore.rule')}</p>
      <p class="entry">
        <button type="button" ?disabled=${this.#busy} @click=${() => this.#restore()}>
          ${t('restore.do')}
        </button>
        <button type="button" class="quiet" ?disabled=${this.#busy} @click=${leave}>
          ${t('restore.leave')}
        </button>
      </p>
      ${this.#status()}`;
  }
}
