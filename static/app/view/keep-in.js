import { html, nothing } from 'lit-html';
import { keepRecords } from '../device.js';
import { readBackup, restore } from '../keep/restore.js';
import { loadSettings } from '../settings.js';
import { day, t } from '../words.js';

const kinds = ['jobs', 'events', 'cards', 'photos', 'settings'];

/** Restoring: a file is read and checked, shown, and only then put in. */
export class KeepIn {
  #app;
  #then;
  #said = null;
  #read = null; // {backup, added}
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
    } catch (fault) {
      const told = fault.message.startsWith('restore.');
      this.#said = [told ? fault.message : 'restore.damaged'];
    }
    this.#busy = false;
    if (this.#read) this.#app.arrive();
    else this.#app.redraw();
  }

  async #restore() {
    if (this.#busy) return;
    this.#busy = true;
    const progress = (count) => this.#say('restore.doing', { count });
    progress(0);
    try {
      await restore(this.#read.backup, progress);
      this.#said = ['restore.done'];
      await loadSettings();
    } catch (error) {
      this.#said = [error.name === 'QuotaExceededError' ? 'restore.full' : 'restore.failed'];
    }
    this.#busy = false;
    this.#read = null;
    keepRecords();
    await this.#then();
    this.#app.arrive();
  }

  draw() {
    return this.open ? this.#review() : this.#form();
  }

  #told() {
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
      ${this.#told()}`;
  }

  #review() {
    const { backup, added } = this.#read;
    const leave = () => {
      this.#read = null;
      this.#app.arrive();
    };
    const nothingNew = kinds.every((kind) => !added[kind]);
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
                <td>${backup.counts[kind]}</td>
                <td>${added[kind]}</td>
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
      ${this.#told()}`;
  }
}
