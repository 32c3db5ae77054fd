import { html, nothing } from 'lit-html';
import { askToKeep } from '../../store/promise.js';
import { checkTexts, compare } from './check.js';
import { cardsHere } from './cards-here.js';
import { recordOf } from '../record.js';
import { cardTexts, mostBytes, mostCards } from './split.js';
import * as store from '../../store/store.js';
import { t } from '../../words/catalogue.js';
import { review } from './review.js';

/** @import { Values } from '../../words/catalogue.js' */

const together = 200; // cards in one write, so that none takes longer than the store may

/** Taking cards in: from a file or a text, looked at card by card, then kept. */
export class TakeIn {
  /** @type {any[] | null | undefined} [{text, bike, findings, status, taken}] */
  entries = null;
  #app;
  #then;
  // What goes on, or what was wrong.
  /** @type {[word: string, values?: Values] | null} */
  #said = null;
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
    this.entries = await this.#app.attempt(async () => {
      const entries = await checkTexts(texts, done);
      compare(entries, await cardsHere());
      entries.forEach((entry, n) => {
        entry.number = n + 1;
        entry.taken = entry.status === 'new';
      });
      return entries;
    });
    this.#said = null;
  }

  /** Does one thing at a time; what was wrong stays on the screen. */
  async #run(doing) {
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
    return this.#run(async () => this.#read(isText ? chosen : await chosen.text()));
  }

  async #save() {
    const taken = (this.entries ?? []).filter(({ taken }) => taken);
    const changed = new Date().toISOString();
    let count = 0;
    const all = await this.#app.attempt(async () => {
      for (; count < taken.length; count += together) {
        const chunk = taken.slice(count, count + together);
        await store.putCards(chunk.map((entry) => recordOf(entry, changed)));
        this.#say('pack.keeping', { count, of: taken.length });
      }
      return true;
    });
    this.entries = null;
    count = Math.min(count, taken.length);
    this.#said = all
      ? ['pack.kept', { count }]
      : ['pack.kept-part', { kept: count, count: taken.length }];
    if (count) askToKeep();
    await this.#then();
  }

  draw() {
    if (this.#busy)
      return html`<h1 tabindex="-1">${t('cards.in')}</h1>
        ${this.#status()}`;
    if (!this.entries) return html`${this.#status()} ${this.#form()}`;
    const leave = () => {
      this.entries = null;
      this.#app.arrive();
    };
    return review(this.entries, this.#app, () => this.#run(() => this.#save()), leave);
  }

  #status() {
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
