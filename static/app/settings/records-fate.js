import { html, nothing } from 'lit-html';
import { browserOf, signsOf } from '../phone/browser.js';
import { installed } from '../phone/install.js';
import { fateOf } from '../phone/storage-rules.js';
import { recordsPersist } from '../phone/storage.js';
import { askToKeep, lastAnswer } from '../store/promise.js';
import { standing } from '../store/database.js';
import { address } from '../ui/address.js';
import { t } from '../words/catalogue.js';

/** @import { StorageFacts } from '../phone/storage-rules.js' */

/** What becomes of the records in this browser, and what it promised. */
export class RecordsFate {
  #app;
  #again = false; // asked here, and refused once more
  #known = false; // what the browser and the store say was read
  browser = browserOf(signsOf());
  /** @type {Omit<StorageFacts, 'store'>} */
  facts = {
    secure: globalThis.isSecureContext !== false,
    installed: installed(),
    persisted: null,
    answer: null,
  };

  constructor(app) {
    this.#app = app;
  }

  /** Reads what only the browser and the store know; until then nothing is told. */
  async load() {
    const [persisted, answer] = await Promise.all([recordsPersist(), lastAnswer()]);
    this.facts = { ...this.facts, persisted, answer };
    this.#known = true;
    this.#app.redraw();
  }

  async #ask() {
    this.#again = (await askToKeep()) === false;
    await this.load();
  }

  draw() {
    const store = standing.word !== 'store.failed';
    const fate = fateOf({ ...this.facts, store }, this.browser);
    const { says, ask } = this.#known ? fate : { says: [], ask: false };
    return html`<div role="status">
        ${says.map((word) => html`<p>${t(word)}</p>`)}
        ${this.#again ? html`<p>${t('storage.asked-again')}</p>` : nothing}
      </div>
      ${
        ask
          ? html`<p>
              <button type="button" class="quiet" @click=${() => this.#ask()}>
                ${t('storage.ask')}
              </button>
            </p>`
          : nothing
      }
      <p>${t('storage.backup')}</p>
      <p>
        <a class="button" href=${address('keep')}>${t('keep.open')}</a>
      </p>`;
  }
}
