import { html, nothing, svg } from 'lit-html';
import { dayText, today } from '../words/dates.js';
import { address } from '../ui/address.js';
import { short } from '../ui/lists.js';
import { waitingPages } from '../store/waiting-pages.js';
import { outline } from '../ui/outline.js';
import { t } from '../words/catalogue.js';
import { place } from './bike-line.js';
import { answers, answersTo } from './asked.js';
import { openJobs } from './open-jobs.js';
import { ownFacts } from './own-facts.js';
import { Seek } from './seek.js';
import { star } from './star.js';
import { nameOf } from './told.js';

const second = 1000; // ms
const seenAtOnce = 4; // rows

/** What the first screen has a moment after its first picture: open jobs, signs, filters, answers. */
export class Later {
  chosen = ''; // of the filter
  #state;
  #app;
  #seek;
  #open = false; // the filter
  /** @type {{ typed: string, list: import('./asked.js').Asked[] } | undefined} */
  #answers;
  /** @type {Awaited<ReturnType<typeof waitingPages>>} */
  #waiting = [];
  #ticks;

  constructor(state, app) {
    this.#state = state;
    this.#app = app;
    this.#seek = new Seek(() => this.#seen());
    this.turn();
    waitingPages().then(
      (waiting) => {
        this.#waiting = waiting;
        if (waiting.length) app.redraw();
      },
      () => {}, // what is wrong with the store is told by itself
    );
    // The time that is left goes on by itself.
    this.#ticks = setInterval(() => this.#timers() && app.redraw(), second);
  }

  close() {
    clearInterval(this.#ticks);
  }

  #timers = () => this.#state.open.some(({ summary }) => summary.timers?.length);

  /** The list is another one now. */
  turn() {
    this.#seek.turn(this.#state.list);
    if (this.#state.typed) this.#seek.ask(this.#state.typed);
  }

  ask(typed) {
    this.#seek.ask(typed);
  }

  async #seen() {
    this.#app.redraw();
    const { typed } = this.#state;
    const { about = [], things = [] } = this.#seek.found ?? {};
    const list = about.length ? await answersTo(about, things) : [];
    if (typed !== this.#state.typed) return;
    this.#answers = { typed, list };
    this.#app.redraw();
  }

  /** The bikes that are meant, once that is known. */
  async meant() {
    await this.#seek.ask(this.#state.typed);
    const { about = [] } = this.#seek.found ?? {};
    return about.length === 1 ? about : this.fits;
  }

  /** The bikes that fit what is typed and chosen. */
  get fits() {
    const { typed, fits, list } = this.#state;
    const found = (typed.trim() && this.#seek.found?.fits) || fits || list;
    return this.chosen ? found.filter((row) => this.#chosen(row)) : found;
  }

  /** Whether they only read like what is typed. */
  get near() {
    return Boolean(this.#state.typed.trim() && this.#seek.found?.near);
  }

  /** How many there are, heard at each key, and seen where that is not what one sees. */
  said(count) {
    const { typed } = this.#state;
    if (!typed && !this.chosen) return nothing;
    const seen = this.near || !count;
    return html`<p role="status" class=${seen ? nothing : 'hidden'}>
      ${t(this.near ? 'bikes.near' : 'bikes.fitting', { count })}
    </p>`;
  }

  #chosen(row) {
    const { mine, own, told } = row;
    switch (this.chosen) {
      case 'mine':
        return mine || own;
      case 'examples':
        return !mine && !own;
      case 'aside':
        return Boolean(told?.aside);
      case 'due':
        return this.#isDue(row);
      default:
        return layoutOf(row) === this.chosen;
    }
  }

  button() {
    const turn = () => {
      this.#open = !this.#open;
      this.#app.redraw();
    };
    return html`<button
      type="button"
      class="quiet"
      aria-expanded=${this.#open}
      aria-label=${t(this.chosen ? 'bikes.filter.on' : 'bikes.filter')}
      data-on=${Boolean(this.chosen)}
      @click=${turn}
    >
      <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
        ${svg`<path d="M2 5h20M6 12h12M10 19h4" fill="none" stroke="currentColor" stroke-width="2.5" />`}
      </svg>
    </button>`;
  }

  paste = toManual;

  /** What stands between the search and the bikes. */
  between() {
    const { told, typed } = this.#state;
    return html`${this.#panel()} ${told?.visits(typed)} ${this.#answer()}`;
  }

  #panel() {
    if (!this.#open) return nothing;
    const layouts = [...new Set(this.#state.list.map(layoutOf))].filter(Boolean).sort();
    const kinds = ['mine', 'due', 'examples', ...(this.#state.told ? ['aside'] : [])];
    const option = (value, label) =>
      html`<option value=${value} .selected=${value === this.chosen}>${label}</option>`;
    const choose = ({ target }) => {
      this.chosen = target.value;
      this.#app.redraw();
    };
    return html`<div class="field">
      <label for="filter">${t('bikes.filter')}</label>
      <select id="filter" @change=${choose}>
        ${option('', t('bikes.filter.all'))}
        ${kinds.map((kind) => option(kind, t(`bikes.filter.${kind}`)))}
        ${layouts.map((layout) => option(layout, t(layout)))}
      </select>
    </div>`;
  }

  /** What is asked, answered; or what is still to be typed for it. Before anything is typed, what waits and what is due. */
  #answer() {
    const { typed } = this.#state;
    if (!typed) return html`${this.#pages()} ${this.#overdue()}`;
    const { things = [], about = [] } = (typed.trim() && this.#seek.found) || {};
    const answered = this.#answers;
    const known = answered && answered.typed === typed ? answered.list : [];
    return html`<div role="status" class="answers">
      ${things.length > 0 && !about.length ? html`<p>${t('asked.which')}</p>` : answers(known)}
    </div>`;
  }

  /** When the oil of a row's bike is due, by what was worked out when it was seen last. */
  due(row) {
    const known = this.#dueOf(row);
    if (!known) return '';
    const { day, at } = known;
    const by = day && at ? 'both' : day ? 'day' : at && 'at';
    const when = by ? t(`bikes.due.${by}`, { day: day && dayText(day), at }) : '';
    if (known.remind > today()) return when;
    return `● ${when ? t('bikes.due.now', { when }) : t('bikes.due')}`;
  }

  #dueOf = ({ key }) => this.#state.due.find(({ id }) => id === key);

  /** A bike whose oil is due, and that stands too far down to be seen. */
  #overdue() {
    const down = this.fits.slice(seenAtOnce);
    const [row] = this.chosen ? [] : down.filter((other) => this.#isDue(other));
    if (!row) return nothing;
    return html`<p>
      <a class="button quiet" href=${address('due')}
        >● ${t('bikes.due.of', { name: nameOf(row) })}</a
      >
    </p>`;
  }

  /** Pages of manuals that are not decided to the end. */
  #pages = () =>
    this.#waiting.map(
      ({ key, name, count }) =>
        html`<p>
          <a class="button quiet" href=${address('manual', ...(key ? [key] : []))}
            >${t(name ? 'bikes.pages-wait.of' : 'bikes.pages-wait', { name: short(name), count })}</a
          >
        </p>`,
    );

  #isDue = (row) => Boolean(this.#dueOf(row)?.remind <= today());

  /** The sign of a row's layout. */
  sign(row) {
    const drawn = outline(layoutOf(row).replace('layout.', ''));
    return drawn === nothing ? place : drawn;
  }

  /** The jobs that are not over. */
  jobs() {
    return openJobs(this.#state.open);
  }

  own = ownFacts;

  /** The way to the cards. */
  foot = () =>
    html`<p><a class="button quiet" href=${address('cards')}>${t('bikes.cards')}</a></p>`;

  star = (row) => star(row, this.#app);
}

/** The way to a bike whose manual is at hand: its page is pasted. */
const toManual = () =>
  html`<a class="button quiet" href=${address('manual')}>
    <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
      ${svg`<path d="M8 4H4v18h16V4h-4M8 2h8v5H8zM8 12h8M8 17h5" fill="none" stroke="currentColor" stroke-width="2.2" />`}
    </svg>
    ${t('bikes.paste')}
  </a>`;

const layoutOf = ({ bike, card }) => (bike ?? card?.bike)?.layout ?? '';
