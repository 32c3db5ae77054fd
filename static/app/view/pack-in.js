import { html, nothing } from 'lit-html';
import { keepRecords } from '../device.js';
import { checkTexts, compare } from '../pack/check.js';
import { cardsHere, recordOf } from '../pack/own.js';
import { cardTexts, mostBytes, mostCards } from '../pack/split.js';
import * as store from '../store.js';
import { t } from '../words.js';
import { review } from './pack-review.js';

const together = 200; // cards in one write, so that none takes longer than the store may

/** Taking cards in: from a file or a text, looked at card by card, then kept. */
export class PackIn {
  entries = null; // [{text, bike, findings, status, taken}]
  #app;
  #then;
  #said = null; // [word, values]: what goes on, or what was wrong
  #busy = false;

  /** `then` is run when cards were kept. */
  constructor(app, then) {
    this.#app = app;
    this.#then = then;
  }

  /** Whether it fills the screen. */
  get open() {
    return Boolean(this.entries) || this.#busy;
  }

  #say(word, values) {
    this.#said = word ? [word, values] : null;
    this.#app.redraw();
  }

  async #read(text) {
    const { texts, fault } = cardTexts(text);
    if (fault) return this.#say(fault, { most: mostCards });
    if (!texts.length) return this.#say('pack.empty');
    const done = (count) => this.#say('pack.checking', { count, of: texts.length });
    done(0);
    try {
      const entries = await checkTexts(texts, done);
      compare(entries, await cardsHere());
      entries.forEach((entry, n) => {
        entry.number = n + 1;
        entry.taken = entry.status === 'new';
      });
      this.entries = entries;
      this.#said = null;
    } catch {
      this.#said = ['cards.failed']; // no core
    }
  }

  /** Does one thing at a time; what was wrong stays on the screen. */
  async #work(doing) {
    if (this.#busy) return;
    this.#busy = true;
    await doing().catch(() => (this.#said = ['pack.unreadable']));
    this.#busy = false;
    if (this.#app.screen.name === 'cards') this.#app.arrive();
  }

  /** Reads a text, or a file. */
  take(chosen) {
    const isText = typeof chosen === 'string';
    if ((isText ? chosen.length : chosen.size) > mostBytes)
      return this.#say('pack.too-large', { most: mostBytes / 1e6 });
    return this.#work(async () => this.#read(isText ? chosen : await chosen.text()));
  }

  async #keep() {
    const taken = this.entries.filter(({ taken }) => taken);
    const changed = new Date().toISOString();
    let count = 0;
    const all = await this.#app.keep(async () => {
      for (; count < taken.length; count += together) {
        const part = taken.slice(count, count + together);
        await store.putCards(part.map((entry) => recordOf(entry, changed)));
        this.#say('pack.keeping', { count, of: taken.length });
      }
      return true;
    });
    this.entries = null;
    count = Math.min(count, taken.length);
    this.#said = [all ? 'pack.kept' : 'pack.kept-part', { count, of: taken.length }];
    if (count) keepRecords();
    await this.#then();
  }

  draw() {
    if (this.#busy)
      return html`<h1 tabindex="-1">${t('cards.in')}</h1>
        ${this.#told()}`;
    if (!this.entries) return html`${this.#told()} ${this.#form()}`;
    const leave = () => {
      this.entries = null;
      this.#app.arrive();
    };
    return review(this.entries, this.#app, () => this.#work(() => this.#keep()), leave);
  }

  #told() {
    return html`<p role="status" class="told">${this.#said ? t(...this.#said) : nothing}</p>`;
  }

  #form() {
    const pick = ({ target }) => {
      const [chosen] = target.files;
      target.value = '';
      if (chosen) this.take(chosen);
    };
    const paste = (event) => {
      event.preventDefault();
      this.take(event.target.elements.pack.value);
    };
    return html`<p>${t('cards.in.how')}</p>
      <p class="file">
        <input
          id="pack-file"
          type="file"
          accept=".json,.txt,application/json,text/plain"
          @change=${pick}
        />
        <label for="pack-file" class="button">${t('cards.open')}</label>
      </p>
      <details>
        <summary>${t('cards.paste')}</summary>
        <form class="ask" @submit=${paste}>
          <label for="pack-text">${t('cards.paste.text')}</label>
          <textarea id="pack-text" name="pack" rows="4" spellcheck="false"></textarea>
          <button type="submit">${t('cards.paste.read')}</button>
        </form>
      </details>`;
  }
}
