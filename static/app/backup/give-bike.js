import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';
import { textOnly } from './backup-form.js';
import { bikeFile } from './one-bike.js';
import { codesAt } from './show-bike.js';
import { handOut } from './hand-out.js';

/** Giving a bike with its record to another phone. */
export class GiveBike {
  #app;
  #id;
  #persons = false;
  /** @type {File | null} */
  #file = null;
  #busy = false;
  #said = '';

  /**
   * @param {string} id of the bike
   * @param {any} app
   */
  constructor(id, app) {
    this.#id = id;
    this.#app = app;
  }

  #say(word) {
    this.#said = word;
    this.#app.redraw();
  }

  async #make() {
    if (this.#busy) return;
    if (!globalThis.crypto?.subtle) return this.#say('keep.insecure');
    this.#busy = true;
    this.#say('give.making');
    try {
      const blob = await bikeFile(this.#id, { persons: this.#persons, plain: textOnly() });
      const ending = blob.type === 'text/plain' ? 'txt' : 'jsonl.gz';
      this.#file = new File([blob], ['tidysump-bike', ending].join('.'), { type: blob.type });
      this.#said = 'give.ready';
    } catch {
      this.#said = 'keep.failed';
    }
    this.#busy = false;
    this.#app.redraw();
  }

  async #give(way) {
    const outcome = await way(this.#file);
    if (outcome) this.#say(outcome);
  }

  draw() {
    const tick = ({ target }) => {
      this.#persons = target.checked;
      this.#file = null; // it was made with the others
      this.#say('');
    };
    return html`<p>${t('give.how')}</p>
      <label class="pick">
        <input type="checkbox" .checked=${this.#persons} @change=${tick} />
        <span>${t('keep.with-persons')}</span>
      </label>
      <p>
        <button type="button" class="quiet" ?disabled=${this.#busy} @click=${() => this.#make()}>
          ${t('give.make')}
        </button>
      </p>
      <p>${t('give.codes.how')}</p>
      <p>
        <a class="button quiet" href=${codesAt(this.#id, this.#persons)}>${t('give.codes')}</a>
      </p>
      <p role="status" class="told">${this.#said ? t(this.#said) : nothing}</p>
      ${this.#file ? handOut(this.#file, (way) => this.#give(way)) : nothing}`;
  }
}
