import { html, nothing } from 'lit-html';
import { download } from '../phone/share.js';
import * as whole from '../store/whole.js';
import { t } from '../words/catalogue.js';
import { today } from '../words/dates.js';
import { toldOf } from './named.js';
import { retryAside } from './restore.js';
import { shown } from './tally.js';
import { unreadList } from './unread-list.js';

/** @import { Aside } from '../store/records.d.ts' */
/** @import { Values } from '../words/catalogue.js' */

/** What lies aside: told, handed out as a file, tried again, removed. */
export class AsideSection {
  #app;
  #then;
  /** @type {Aside[]} */
  #rows = [];
  #asked = false; // whether to remove them
  #busy = false;
  /** @type {[word: string, values?: Values] | null} */
  #said = null;

  /** `then` is run when something came of it. */
  constructor(app, then) {
    this.#app = app;
    this.#then = then;
  }

  /** Reads what lies aside. */
  async load() {
    this.#rows = (await this.#app.attempt(whole.aside)) ?? [];
  }

  /** Whether anything lies aside, or just did. */
  get any() {
    return this.#rows.length > 0 || this.#said !== null;
  }

  async #do(action, said) {
    if (this.#busy) return;
    this.#busy = true;
    this.#asked = false;
    const done = await this.#app.attempt(async () => (await action(), true));
    await this.load();
    this.#busy = false;
    this.#said = done ? said() : null;
    await this.#then();
    this.#app.redraw();
  }

  #save() {
    const lines = this.#rows.map(({ text }) => `${text}\n`);
    download(new File(lines, `tidysump-aside-${today()}.txt`, { type: 'text/plain' }));
    this.#said = ['aside.saved'];
    this.#app.redraw();
  }

  #ask(asked) {
    this.#asked = asked;
    this.#app.redraw();
  }

  draw() {
    const again = () => this.#do(retryAside, () => ['aside.tried', { count: this.#rows.length }]);
    const count = this.#rows.length;
    return html`${
        count
          ? html`<p>${t('aside.what', { count })}</p>
              ${unreadList(this.#rows.slice(0, shown).map(toldOf), count)}
              <p class="entry">
                <button type="button" @click=${() => this.#save()}>${t('aside.save')}</button>
                <button type="button" class="quiet" ?disabled=${this.#busy} @click=${again}>
                  ${t('aside.again')}
                </button>
              </p>
              ${this.#removal()}`
          : nothing
      }
      <p role="status" class="told">${this.#said ? t(...this.#said) : nothing}</p>`;
  }

  #removal() {
    const remove = () =>
      this.#do(
        () => whole.dropAside(this.#rows.map(({ key }) => key)),
        () => ['aside.removed'],
      );
    return this.#asked
      ? html`<p role="status">${t('aside.sure')}</p>
          <p class="entry">
            <button type="button" @click=${remove}>${t('aside.remove.yes')}</button>
            <button type="button" class="quiet" @click=${() => this.#ask(false)}>
              ${t('aside.remove.no')}
            </button>
          </p>`
      : html`<p>
          <button type="button" class="quiet" @click=${() => this.#ask(true)}>
            ${t('aside.remove')}
          </button>
        </p>`;
  }
}
