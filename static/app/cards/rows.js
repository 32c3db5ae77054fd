import { html, nothing } from 'lit-html';
import * as store from '../store/store.js';
import { t } from '../words/catalogue.js';
import { bikeFacts } from '../bikes/bike-line.js';
import { ownFacts } from '../bikes/own-facts.js';
import { short } from '../ui/lists.js';

/** The rows of cards: each to be ticked, or deleted, or brought back in its place. */
export class CardRows {
  ticked = new Set(); // keys
  #app;

  constructor(app) {
    this.#app = app;
  }

  /** Draws a row of bikeList; it notes in the row what it asks and did. */
  draw(row) {
    return html`<li>${this.#content(row)}</li>`;
  }

  #content(row) {
    const name = short(row.bike.name);
    if (row.gone) return said('cards.gone', name, [['cards.undo', (e) => this.#undo(row, e)]]);
    if (row.asked)
      return said('cards.delete.ask', name, [
        ['cards.delete', (e) => this.#delete(row, e), ''],
        ['cards.keep', (e) => this.#ask(row, false, e)],
      ]);
    return html`${this.#box(row)} ${row.own ? this.#button(row, name) : nothing}`;
  }

  #box(row) {
    const tick = ({ target }) => {
      if (target.checked) this.ticked.add(row.key);
      else this.ticked.delete(row.key);
      this.#app.redraw();
    };
    return html`<label class="pick">
      <input type="checkbox" .checked=${this.ticked.has(row.key)} @change=${tick} />
      <span class="facts">${bikeFacts(row, { own: ownFacts(row) })}</span>
    </label>`;
  }

  #button(row, name) {
    return html`<button
      type="button"
      class="quiet"
      aria-label=${t('cards.delete.of', { name })}
      @click=${(e) => this.#ask(row, true, e)}
    >
      ${t('cards.delete')}
    </button>`;
  }

  #ask(row, asked, { target }) {
    row.asked = asked;
    this.#turned(target.closest('li'));
  }

  async #delete(row, { target }) {
    const line = target.closest('li');
    row.gone = await this.#app.attempt(async () => {
      const record = await store.card(row.key);
      await store.deleteCard(row.key);
      return record;
    });
    row.asked = false;
    if (row.gone) this.ticked.delete(row.key);
    this.#turned(line);
  }

  async #undo(row, { target }) {
    const line = target.closest('li');
    const back = await this.#app.attempt(() => store.putCard(row.gone).then(() => true));
    if (back) row.gone = undefined;
    this.#turned(line);
  }

  /** The row says something else now; the focus stays in it. */
  #turned(line) {
    this.#app.redraw();
    line.querySelector('button')?.focus();
  }
}

const said = (word, name, buttons) =>
  html`<p class="told" role="status">${t(word, { name })}</p>
    <span class="entry"
      >${buttons.map(
        ([label, press, kind = 'quiet']) =>
          html`<button type="button" class=${kind} @click=${press}>${t(label)}</button>`,
      )}</span
    >`;
