import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { limits, loadLimits } from '../core/limits.js';
import { tellBike } from '../store/bikes.js';
import { Drafts, draftsWritten } from '../store/drafts.js';
import { settings } from '../store/settings.js';
import { draftMark } from '../ui/draft-mark.js';
import { fitted, roomFor } from '../ui/letters.js';
import { said, tied } from '../ui/said.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { dayText } from '../words/dates.js';

/** @import { Finding, Outlook } from '../core/core.d.ts' */

const name = 'odometer'; // of the draft

/** What the odometer of a bike shows today, to be written down whichever screen tells of the bike. */
export class Odometer {
  bike;
  #app;
  #after;
  #drafts;
  /** @type {Finding[]} */
  #found = [];
  #restored = false; // it was typed before the page was left

  /**
   * @param {string} bike
   * @param {any} app
   * @param {() => Promise<Outlook | undefined>} after works out anew what follows from it
   * @param {Drafts} drafts
   */
  constructor(bike, app, after, drafts) {
    this.bike = bike;
    this.#app = app;
    this.#after = after;
    this.#drafts = drafts;
    this.#restored = this.#typed !== undefined;
  }

  /**
   * @param {string} bike
   * @param {any} app
   * @param {() => Promise<Outlook | undefined>} after
   */
  static async open(bike, app, after) {
    const [drafts] = await Promise.all([
      Drafts.open(`bike ${bike}`),
      loadWordsOf('due'),
      loadLimits(),
    ]);
    return new Odometer(bike, app, after, drafts);
  }

  /** @returns {string | undefined} what stands in the field and is not kept */
  get #typed() {
    return this.#drafts.get(name);
  }

  /** @param {Outlook} [outlook] */
  draw(outlook) {
    const { last, findings: all = [] } = outlook ?? {};
    const id = `odometer-${this.bike}`;
    const wrong = [...this.#found, ...all.filter(({ where }) => where === '/last')];
    return html`<form class="odometer" @submit=${(e) => (e.preventDefault(), this.#keep())}>
      <label for=${id}>${t('odometer.title')}</label>
      <div class="entry">
        <input
          id=${id}
          name=${name}
          ${tied(id, wrong)}
          inputmode="decimal"
          .value=${live(this.#typed ?? '')}
          autocomplete="off"
          autocapitalize="none"
          spellcheck="false"
          enterkeyhint="done"
          @input=${({ target }) => this.#type(fitted(target))}
        />
        <button type="submit">${t('odometer.keep')}</button>
      </div>
      ${roomFor(id, limits.value)} ${draftMark(this.#standing, nothing)} ${said(id, wrong)}
      <p>
        ${last ? t('odometer.last', { day: dayText(last.day), at: last.texts?.[0] }) : t('odometer.none')}
      </p>
      ${
        last?.id
          ? html`<button type="button" class="quiet" @click=${() => this.#takeBack(last.id)}>
              ${t('odometer.back')}
            </button>`
          : nothing
      }
    </form>`;
  }

  /** @returns {import('../ui/draft-mark.js').Standing} */
  get #standing() {
    if (!this.#restored || this.#typed === undefined) return '';
    return draftsWritten() ? 'written' : 'pending';
  }

  #type(typed) {
    if (typed) this.#drafts.put(name, typed);
    else this.#drafts.drop(name);
    if (!this.#found.length) return;
    this.#found = [];
    this.#app.redraw();
  }

  async #keep() {
    const value = this.#typed?.trim() ?? '';
    const told = { kind: 'odometer', value, signs: { system: settings.system } };
    const kept = await this.#tell(told, [this.#drafts.key(name)]);
    if (kept) this.#app.say(t('odometer.kept', { at: kept.last?.texts[0] ?? value }));
    else document.getElementById(`odometer-${this.bike}`)?.focus();
  }

  async #takeBack(id) {
    if (await this.#tell({ kind: 'undo', what: id }, [])) this.#app.say(t('job.undone'));
  }

  /** @returns {Promise<any>} what follows, undefined where it is not kept */
  async #tell(told, drafts) {
    const found = await this.#app.attempt(() => tellBike(this.bike, told, { drafts }));
    this.#found = found ?? [];
    const kept = found && !found.some(({ grade }) => grade === 'refuse');
    if (kept) this.#restored = false;
    const outlook = kept ? ((await this.#app.attempt(this.#after)) ?? {}) : undefined;
    this.#app.redraw();
    return outlook;
  }
}
