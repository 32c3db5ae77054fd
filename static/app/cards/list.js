import { html, nothing } from 'lit-html';
import { search } from '../words/search.js';
import { t } from '../words/catalogue.js';
import { finder, more } from '../ui/lists.js';

const many = 6; // from so many cards on one may want to search
const page = 50; // cards drawn at once

/** The cards that can be given away, as bikeList gives them. */
export class CardList {
  rows = [];
  #typed = '';
  #shown = page;
  #marks;
  #app;

  /** `marks` are the CardRows that draw each and know which are ticked. */
  constructor(marks, app) {
    this.#marks = marks;
    this.#app = app;
  }

  draw() {
    const fits = search(this.rows, this.#typed).filter((row) => !row.twin);
    const find = (typed) => {
      [this.#typed, this.#shown] = [typed, page];
      this.#app.redraw();
    };
    const further = () => {
      this.#shown += page;
      this.#app.redraw();
    };
    return html`
      ${this.rows.length > many ? finder(this.#typed, find) : nothing}
      <ul class="bikes cards">
        ${fits.slice(0, this.#shown).map((row) => this.#marks.draw(row))}
      </ul>
      ${more(fits.length - this.#shown, further)} ${this.#tickers(fits)}
    `;
  }

  /** Ticks all own cards that fit, or none. */
  #tickers(fits) {
    const own = fits.filter((row) => row.own && !row.gone);
    const tick = (rows) => () => {
      this.#marks.ticked = new Set(rows.map(({ key }) => key));
      this.#app.redraw();
    };
    const all = html`<button type="button" class="quiet" @click=${tick(own)}>
      ${t('cards.tick-own', { count: own.length })}
    </button>`;
    const none = html`<button type="button" class="quiet" @click=${tick([])}>
      ${t('cards.tick-none')}
    </button>`;
    return html`<p class="entry">
      ${own.length > 1 ? all : nothing} ${this.#marks.ticked.size > 1 ? none : nothing}
    </p>`;
  }
}
