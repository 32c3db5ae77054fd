import { html, nothing } from 'lit-html';
import { search } from '../words/search.js';
import { settings } from '../store/settings.js';
import { address } from '../ui/address.js';
import { more, short } from '../ui/lists.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { own } from '../site/own.js';
import { garageList } from './told-list.js';

const page = 25; // bikes drawn at once, and at each tap for more
const few = 12; // those drawn while one types: more would make it slow

/** The bikes of the first screen, where something is told of one: it comes after the first paint. */
export class Told {
  word = 'bikes.search-told'; // of the field in which one searches
  cards;
  #bikes;
  #fits;
  #shown = page;
  #typed = '';
  #asideShown = false;
  #app;

  constructor({ bikes, cards }, app) {
    this.cards = cards;
    this.#bikes = this.#fits = bikes;
    this.#app = app;
  }

  /** Makes it of what is told, of the list of cards and of the lines of the jobs. */
  static async open(rows, list, jobs, app) {
    await loadWordsOf('work');
    return new Told(garageList(rows, list, jobs), app);
  }

  find(typed) {
    // More letters fit fewer: only those that fitted are looked through.
    const among = typed.startsWith(this.#typed) ? this.#fits : this.#bikes;
    this.#fits = search(among, typed);
    [this.#typed, this.#shown] = [typed, few];
  }

  /** `cards` is how many cards fit what is typed; `item` draws a bike of which nothing is told. */
  draw(cards, item) {
    const typed = this.#typed.trim();
    const here = this.#fits.filter(({ told }) => typed || this.#asideShown || !told?.aside);
    const left = this.#fits.length - here.length;
    return html`
      ${settings.forOthers && !typed ? html`<p><a class="button quiet" href=${address('visits')}>${t('bikes.visits')}</a></p>` : nothing}
      ${typed ? html`<p role="status">${t('bikes.fitting', { count: here.length + cards })}</p>` : nothing}
      ${
        here.length
          ? html`<ul class="bikes">
              ${here.slice(0, this.#shown).map((row) => (row.told ? toldItem(row) : item(row)))}
            </ul>`
          : nothing
      }
      ${more(here.length - this.#shown, () => this.#set(() => (this.#shown += page)))}
      ${
        left
          ? html`<p>
              <button
                type="button"
                class="quiet"
                @click=${() => this.#set(() => (this.#asideShown = true))}
              >
                ${t('bikes.aside', { count: left })}
              </button>
            </p>`
          : nothing
      }
      ${cards ? html`<h2>${t('bikes.from')}</h2>` : nothing}
    `;
  }

  #set(change) {
    change();
    this.#app.redraw();
  }
}

/** A bike of which something is told: by that first, then by its card. */
function toldItem({ key, told, card, model }) {
  const { called, plate, words, owner, aside, figures = [] } = told;
  const name = [called, plate].filter(Boolean).join(' · ');
  const { years, layout, invented, oils = [] } = card?.bike ?? {};
  const about = [name ? model : '', years, layout && t(layout)].filter(Boolean).join(' ');
  const apart = [words, owner].filter(Boolean).join(' · ');
  const [oil] = oils;
  // What its card says of the volume is not what it takes, where one of its own is told.
  const volume = figures.some(({ what }) => what.startsWith('volume')) ? '' : oil?.due?.texts?.[0];
  return html`<li>
    <a href=${address('bike', key)}>
      <span class="who">
        <strong>${short(name || model) || t('bikes.unnamed')}</strong>
        ${about ? html`<span>${short(about)}</span>` : nothing}
        ${apart ? html`<span>${short(apart)}</span>` : nothing}
        ${invented ? html`<span>${t('example')}</span>` : nothing}
        ${aside ? html`<span class="gaps">${t(own(asides, aside) ?? 'bike.aside.other')}</span>` : nothing}
      </span>
      <span class="oil">
        ${volume ? html`<span class="value">${text(volume)}</span>` : nothing}
        <span>${oil?.grades ? t('grade.sae', { grade: oil.grades[0] }) : nothing}</span>
      </span>
    </a>
  </li>`;
}

const asides = { sold: 'bike.aside.sold', gone: 'bike.aside.gone', other: 'bike.aside.other' };
