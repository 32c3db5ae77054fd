import { html, nothing } from 'lit-html';
import { erasePersons, personsHere } from '../store/persons.js';
import { address, go } from '../ui/address.js';
import { t } from '../words/catalogue.js';

/** @import { Persons } from '../store/persons.js' */

/** What is here of other people, and the one act that takes it away. */
export class PersonsForm {
  #app;
  /** @type {Persons | undefined} nothing until it was looked for */
  #found;
  #busy = false;

  constructor(app) {
    this.#app = app;
  }

  /** Looks for it. */
  async load() {
    this.#found = await personsHere();
    this.#app.redraw();
  }

  /** @param {Persons} found */
  async #erase(found) {
    if (this.#busy) return;
    this.#busy = true;
    const erase = async () => (await erasePersons(found), true);
    if (!(await this.#app.attempt(erase, 'persons.failed'))) {
      this.#busy = false;
      return;
    }
    go('keep');
    location.reload(); // what the page remembers must go too
  }

  draw() {
    const found = this.#found;
    return html`<h1 tabindex="-1">${t('persons.title')}</h1>
      <p>${t('persons.what')}</p>
      ${found ? this.#told(found) : html`<p role="status">${t('persons.looking')}</p>`}
      <p class="entry">
        <a class="button quiet" href=${address('keep')}>${t('persons.back')}</a>
      </p>`;
  }

  /** @param {Persons} found */
  #told(found) {
    const { facts, photos, papers, others } = found;
    const line = (word, count) => (count ? html`<li>${t(word, { count })}</li>` : nothing);
    if (!facts.length && !photos.length && !papers && !others)
      return html`<p>${t('persons.none')}</p>`;
    return html`<ul>
        ${line('persons.facts', facts.length)} ${line('persons.pictures', photos.length)}
        ${line('persons.papers', papers)}
        <li>${t('persons.rest')}</li>
      </ul>
      <p>${t('persons.stays')}</p>
      <p>${t('persons.gone')}</p>
      <p class="entry">
        <a class="button" href=${address('keep')}>${t('erase.backup')}</a>
        <button
          type="button"
          class="quiet"
          ?disabled=${this.#busy}
          @click=${() => this.#erase(found)}
        >
          ${t('persons.do')}
        </button>
      </p>`;
  }
}
