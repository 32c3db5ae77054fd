import { html } from 'lit-html';
import { eraseAll } from '../store/whole.js';
import { address, go } from '../ui/address.js';
import { t } from '../words/catalogue.js';

/** The last chance before everything is erased. */
export class EraseForm {
  #app;
  #typed = '';

  constructor(app) {
    this.#app = app;
  }

  get #meant() {
    return this.#typed.trim().toLowerCase() === t('erase.word');
  }

  async #erase(event) {
    event.preventDefault();
    if (!this.#meant) return;
    const erased = await this.#app.attempt(async () => (await eraseAll(), true), 'erase.failed');
    if (!erased) return;
    go('bikes');
    location.reload(); // what the page remembers must go too
  }

  draw() {
    const input = ({ target }) => {
      this.#typed = target.value;
      this.#app.redraw();
    };
    return html`<h1 tabindex="-1">${t('erase.title')}</h1>
      <p>${t('erase.what')}</p>
      <p class="entry">
        <a class="button" href=${address('keep')}>${t('erase.backup')}</a>
        <a class="button quiet" href=${address('settings')}>${t('erase.back')}</a>
      </p>
      <form class="ask" @submit=${(event) => this.#erase(event)}>
        <label for="erase-word">${t('erase.label', { word: t('erase.word') })}</label>
        <input
          id="erase-word"
          autocomplete="off"
          autocapitalize="none"
          spellcheck="false"
          @input=${input}
        />
        <p><button type="submit" ?disabled=${!this.#meant}>${t('erase.do')}</button></p>
      </form>`;
  }
}
