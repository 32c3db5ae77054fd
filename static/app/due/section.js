import { html, nothing } from 'lit-html';
import { calendarFile } from './calendar.js';
import { outlookOf, remember } from './outlook.js';
import { download, share, shareable } from '../phone/share.js';
import { logOf } from '../store/of-bike.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { radios } from '../ui/choice.js';
import { Odometer } from './odometer.js';
import { dueLine, dueOil, pace, uses } from './oil.js';
import { findings } from '../ui/findings.js';

/** @import { Bench, Card } from '../core/core.d.ts' */

/** When the oil of a bike is due again, as a section of a screen. */
export class DueSection {
  outlook;
  /** @type {Odometer | undefined} */
  #odometer;
  /** @type {boolean | null | undefined} how the bike is used, as it was asked about last */
  #severe;
  severe = false; // how the bike is used, as the newest job says

  /**
   * @param {Card} card
   * @param {any} app
   * @param {{ id: string, name: string }} [bike] that which the card implies, where none is named
   */
  constructor(card, app, bike = { id: card.id ?? '', name: `${card.make} ${card.model}` }) {
    this.id = bike.id;
    this.name = bike.name;
    this.app = app;
  }

  /**
   * Works it out; only if that job is the newest of the bike, where one is named.
   *
   * @param {{ severe?: boolean | null, newest?: string }} asked
   */
  async load({ severe, newest } = {}) {
    await loadWordsOf('due');
    const jobs = await logOf(this.id);
    if (newest && jobs[0]?.id !== newest) return;
    this.#severe = severe;
    this.outlook = await outlookOf(jobs, severe, this.id);
    if (this.#odometer?.bike !== this.id)
      this.#odometer = await Odometer.open(this.id, this.app, async () => {
        await this.load({ severe: this.#severe });
        return this.outlook;
      });
    this.severe = Boolean(this.outlook?.severe);
    if (severe === undefined) await remember(this.id, this.name, this.outlook);
    this.app.redraw();
  }

  /**
   * Works it out on a plan: the bike is used as it was, until the person says otherwise.
   *
   * @param {Bench} bench
   * @param {(values: Bench) => void} change
   */
  begin(bench, change) {
    const known = () => bench.severe === undefined && this.severe && change({ severe: true });
    this.load().then(known, () => {}); // without a store there is no record
  }

  /**
   * Works it out again when the bench has changed in what matters.
   *
   * @param {Bench} bench
   * @param {Bench} changed
   */
  follow({ severe }, changed) {
    if ('severe' in changed || 'system' in changed) this.load({ severe }).catch(() => {});
  }

  /**
   * Asks how the bike is used.
   *
   * @param {Bench} bench
   * @param {(values: Bench) => void} change
   */
  use({ severe }, change) {
    const pick = (v) => change({ severe: v === 'hard' });
    return html`${radios('plan.use', 'plan.use', severe ? 'hard' : 'usual', ['usual', 'hard'], pick)}
      <p><small>${t('plan.use.when')}</small></p>`;
  }

  /** The section with its heading; nothing while nothing is known, nor wrong in the record. */
  draw() {
    const { first, findings: faults } = this.outlook ?? {};
    if (!first && !faults) return nothing;
    return html`<section>
      <h2>${t('due.title')}</h2>
      ${first ? this.#body() : findings(faults)}
    </section>`;
  }

  /** The same in one line that opens. */
  line() {
    const first = this.outlook?.oils?.find(({ circuit }) => circuit === this.outlook.first);
    if (!first) return nothing;
    return html`<details class="today">
      <summary>${t('due.title')}: ${dueLine(first)}</summary>
      ${this.#body()}
    </details>`;
  }

  #body() {
    const { oils, uses: used, last, findings: faults = [] } = this.outlook;
    return html`${oils.map((oil) => dueOil(oil, oils.length === 1, last))}
    ${this.#odometer?.draw(this.outlook)} ${pace(this.outlook)} ${uses(used)}
    ${findings(faults.filter(({ where }) => where !== '/last'))}
    ${oils.some(({ remind }) => remind) ? this.#calendar() : nothing}`;
  }

  /** What the odometer shows today, by itself. */
  odometer() {
    return this.#odometer?.draw(this.outlook) ?? nothing;
  }

  #calendar() {
    const give = (way) => async () => {
      const said = await this.app.attempt(async () => {
        const file = await calendarFile(this.id, this.name, this.outlook);
        return (await way(file)) ?? '';
      }, 'due.calendar.failed');
      if (said) this.app.say(t(`due.calendar.${said}`));
    };
    const saved = (file) => (download(file), 'saved');
    const button = (word, way) =>
      html`<button type="button" class="quiet" @click=${give(way)}>${t(word)}</button>`;
    const some = new File(['x'], 'oil.ics', { type: 'text/calendar' });
    return html`<p class="entry">
      ${button('due.calendar', saved)}
      ${shareable(some) ? button('due.calendar.share', share) : nothing}
    </p>`;
  }
}
