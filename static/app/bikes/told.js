import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { Machine } from '../plan/machine.js';
import { settings } from '../store/settings.js';
import { address } from '../ui/address.js';
import { short } from '../ui/lists.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { own } from '../site/own.js';
import { bikeRow } from './bike-line.js';
import { garageList } from './told-list.js';

const most = 25; // bikes whose own volume is worked out: a list shows so many

const isVolume = ({ what }) => what.startsWith('volume');

/** The bikes of the first screen, where something is told of one: it comes after the first paint. */
export class Told {
  list;
  from = 'bikes.from'; // above the cards of one's own that no bike follows
  #asideShown = false;
  #app;

  constructor({ bikes, cards }, app) {
    // A card from which a bike may be begun is none that one has.
    this.list = [...bikes, ...cards.map((row) => ({ ...row, mine: false }))];
    this.#app = app;
  }

  /** Makes it of what is told, of the list of cards and of the lines of the jobs. */
  static async open(rows, list, jobs, app) {
    await loadWordsOf('work');
    const told = new Told(garageList(rows, list, jobs), app);
    told.#lay().catch(() => {}); // a volume that is not known yet is not shown
    return told;
  }

  /** What bikes take by figures of their own, which lie over their cards. */
  async #lay() {
    const own = this.list.filter(({ told }) => told?.figures?.some(isVolume)).slice(0, most);
    for (const row of own) {
      const machine = await Machine.open(row.key, false, () => {});
      await machine.told;
      const { card } = machine;
      if (!card) continue;
      const { system } = settings;
      const { ok } = await call('cards', { cards: [card], bench: { system } });
      row.laid = ok?.bikes?.[0]?.oils?.[0]?.due.texts?.[0];
      row.volume = row.laid ?? row.volume;
    }
    if (own.length) this.#app.redraw();
  }

  /** Those of a list that stand on the screen: what was laid aside only where it is looked for. */
  shown(rows, typed, chosen) {
    return typed.trim() || chosen === 'aside' || this.#asideShown
      ? rows
      : rows.filter(({ told }) => !told?.aside);
  }

  /** The way to today's visits, for whoever works for others. */
  visits(typed) {
    if (!settings.forOthers || typed.trim()) return nothing;
    return html`<p><a class="button quiet" href=${address('visits')}>${t('bikes.visits')}</a></p>`;
  }

  /** The way to those that were laid aside. */
  aside(rows, shown) {
    const count = rows.length - shown.length;
    if (!count) return nothing;
    const show = () => {
      this.#asideShown = true;
      this.#app.redraw();
    };
    return html`<p>
      <button type="button" class="quiet" @click=${show}>${t('bikes.aside', { count })}</button>
    </p>`;
  }

  /** A bike of which something is told: by that first, then by its card. */
  facts({ told, card, model, laid }, { sign, due }) {
    const { words, owner, aside, figures = [] } = told;
    const name = calledBy(told);
    const { years, layout, invented, oils = [] } = card?.bike ?? {};
    const [oil] = oils;
    // What its card says of the volume is not what it takes, where one of its own is told.
    const volume = figures.some(isVolume) ? (laid ?? null) : oil?.due?.texts?.[0];
    return bikeRow({
      sign,
      name: short(name || model) || t('bikes.unnamed'),
      about: [
        aside && t(own(asides, aside) ?? 'bike.aside.other'),
        due,
        words && short(words),
        owner && short(owner),
        name ? short(model) : years && text(years),
        !name && !words && !owner && layout && t(layout),
        invented && t('example'),
      ],
      volume: card ? volume : null,
      grade: oil?.grades?.[0],
    });
  }
}

const calledBy = ({ called, plate }) => [called, plate].filter(Boolean).join(' · ');

const asides = { sold: 'bike.aside.sold', gone: 'bike.aside.gone', other: 'bike.aside.other' };

/** What a row of the list is called. */
export const nameOf = ({ told, model, bike }) =>
  short((told ? calledBy(told) || model : bike.name) ?? '') || t('bikes.unnamed');
