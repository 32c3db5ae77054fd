import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { pasteable, pasteText } from '../phone/share.js';
import { inTurn } from '../site/in-turn.js';
import { t } from '../words/catalogue.js';
import { clean, textOf } from './text-of.js';

const kilo = 1000;

/** How the text of a page comes in: pasted, typed, from files that are chosen, dropped or shared. */
export class Intake {
  #app;
  #give;
  #reading;
  word = ''; // what was wrong with the latest
  #turn = inTurn();
  #coming = new Set(); // texts that are being taken in

  /**
   * `give` is given the texts of pages; `reading` keeps what is typed and not read yet.
   *
   * @param {any} app
   * @param {import('./reading.js').Reading} reading
   * @param {(texts: string[]) => Promise<unknown>} give
   */
  constructor(app, reading, give) {
    this.#app = app;
    this.#reading = reading;
    this.#give = give;
  }

  /** Takes text files in; of several each is a page. */
  async files(list) {
    const read = await Promise.all([...list].map((file) => textOf(file, limits.page ?? 0)));
    const texts = read.flatMap(({ text }) => text ?? []);
    const { fault } = read.find((one) => one.fault) ?? {};
    await this.#take(texts, texts.length && !fault ? '' : (fault ?? 'manual.empty'));
  }

  /** Takes a text in. */
  text = (text) => this.files([new Blob([clean(text)])]);

  async #take(texts, word) {
    const all = new Map(texts.map((text) => [text.trim(), text]));
    for (const text of this.#coming) all.delete(text); // what is tapped twice comes once
    if (texts.length && !all.size) return;
    for (const text of all.keys()) this.#coming.add(text);
    await this.#turn(async () => {
      const fresh = [...all.values()].filter((text) => !this.#reading.has(text));
      this.word = word || (fresh.length ? '' : 'manual.again');
      if (all.has(clean(this.#reading.typed('page')).trim())) this.#reading.type('page', '');
      try {
        if (fresh.length) await this.#give(fresh);
      } finally {
        for (const text of all.keys()) this.#coming.delete(text);
        this.#app.redraw();
      }
    });
  }

  async #paste() {
    const text = await pasteText();
    if (text?.trim()) return this.text(text);
    this.word = text === undefined ? 'manual.no-clipboard' : 'manual.clipboard-empty';
    this.#app.redraw();
    document.getElementById('page-text')?.focus();
  }

  /** What was wrong with the latest. */
  told() {
    return html`<p role="status" class="told">
      ${this.word ? t(this.word, { most: (limits.page ?? 0) / kilo }) : nothing}
    </p>`;
  }

  draw() {
    const pick = async ({ target }) => {
      const chosen = [...target.files];
      target.value = '';
      if (chosen.length) await this.files(chosen);
    };
    const pasted = (event) => {
      const { files = [] } = event.clipboardData ?? {};
      const text = event.clipboardData?.getData('text/plain');
      if (!text && files.length) this.files(files);
      if (!text?.trim() || event.target.value.trim()) return; // what is added to is read by the button
      event.preventDefault();
      this.text(text);
    };
    const typed = (event) => {
      event.preventDefault();
      this.text(event.target.elements.page.value);
    };
    return html`
      <p>${t('manual.how')}</p>
      <p class="line">${t('manual.private')}</p>
      ${this.told()}
      <form class="ask" @submit=${typed}>
        <label for="page-text">${t('manual.text')}</label>
        <textarea
          id="page-text"
          name="page"
          rows="5"
          spellcheck="false"
          autocomplete="off"
          .value=${this.#reading.typed('page')}
          @input=${({ target }) => this.#reading.type('page', target.value)}
          @paste=${pasted}
        ></textarea>
        <p class="entry">
          <button type="submit" class="quiet">${t('manual.read-it')}</button>
          <span class="file">
            <input id="page-file" type="file" multiple accept=".txt,text/plain" @change=${pick} />
            <label for="page-file" class="button quiet">${t('manual.file')}</label>
          </span>
        </p>
      </form>
    `;
  }

  /** The main way in, where this browser has it. */
  main = () =>
    pasteable()
      ? html`<button type="button" class="main" @click=${() => this.#paste()}>
          ${t('manual.paste')}
        </button>`
      : nothing;
}
