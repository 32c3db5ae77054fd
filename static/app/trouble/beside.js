import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { copyable, copyText, shareText, textShareable } from '../phone/share.js';
import { bikeAt } from '../store/bike-at.js';
import { bikeName } from '../store/bike-name.js';
import { laidOver } from '../store/over-card.js';
import { settings } from '../store/settings.js';
import { t } from '../words/catalogue.js';

/** @import { Card, RoadsideAnswer, Line } from '../core/core.d.ts' */

/** A bike by its id or its card's key, as it stands there: its name, and its card with its own figures. */
async function known(id) {
  const { card, row } = await bikeAt(id);
  if (!card) return undefined;
  const model = `${card.make} ${card.model}`;
  return { name: bikeName(row, model), card: (await laidOver(card, row?.figures)).card };
}

/** What one needs beside the bike: how its level is read, and what to say to whoever fetches it. */
export class Beside {
  #app;
  #table;
  #ticket = 0;
  /** @type {RoadsideAnswer} */
  #told = {};
  /** @type {Map<string, Promise<{ name: string, card: Card } | undefined>>} */
  #bikes = new Map();
  #said = '';

  constructor(table, app) {
    this.#table = table;
    this.#app = app;
  }

  /**
   * Asks anew, for the problem or door on the screen. It is a help: where it can't be had,
   * nothing stands there.
   *
   * @param {{ fault?: { id: string }, state: import('./address.js').TroubleState, job?: any }} where
   */
  async turn({ fault, state, job }) {
    const ticket = ++this.#ticket;
    const { answers, hand, door } = state;
    const bike = await this.#bike(state.bike, job);
    const { ok } = await call('roadside', {
      ...(fault
        ? { id: fault.id, answers, hand, table: { ...this.#table, faults: [fault] } }
        : { door }),
      ...bike,
      system: settings.system,
    });
    if (ticket !== this.#ticket) return;
    this.#told = ok ?? {};
    this.#said = '';
    this.#app.redraw();
  }

  async #bike(id, job) {
    if (job) return { name: job.name, card: job.record.card };
    if (!id) return undefined;
    if (!this.#bikes.has(id))
      this.#bikes.set(
        id,
        known(id).catch(() => undefined),
      );
    return this.#bikes.get(id);
  }

  /** Forgets what was told, when another problem is shown. */
  leave() {
    this.#ticket++;
    this.#told = {};
  }

  /**
   * How the level of each oil of this bike is read.
   *
   * @param {boolean} open whether one oil's is read at once
   */
  levels(open) {
    const { levels } = this.#told;
    if (!levels) return nothing;
    return html`<details class="reading" ?open=${open && levels.length === 1}>
      <summary>${t('reading.title')}</summary>
      ${levels.map(
        ({ role, lines = [] }) =>
          html`${levels.length > 1 ? html`<h2>${t(`role.${role}`)}</h2>` : nothing}
            <ul>
              ${lines.map(readingLine)}
            </ul>`,
      )}
    </details>`;
  }

  /** What to say to whoever fetches the bike. */
  message() {
    const { say } = this.#told;
    if (!say) return nothing;
    const text = say.map(sentence).join('\n');
    const copy = async () => this.#tell((await copyText(text)) ? 'say.copied' : 'say.failed');
    const send = async () => (await shareText(text)) === 'failed' && this.#tell('say.failed');
    return html`<section class="message">
      <h2>${t('say.title')}</h2>
      <p class="bar">
        ${
          textShareable()
            ? html`<button type="button" class="quiet" @click=${send}>${t('say.share')}</button>`
            : nothing
        }
        ${
          copyable()
            ? html`<button type="button" class="quiet" @click=${copy}>${t('say.copy')}</button>`
            : nothing
        }
      </p>
      <p role="status">${this.#said ? t(this.#said) : nothing}</p>
      <details>
        <summary>${t('say.text')}</summary>
        <ul>
          ${say.map((line) => html`<li>${sentence(line)}</li>`)}
        </ul>
      </details>
    </section>`;
  }

  #tell(word) {
    this.#said = word;
    this.#app.redraw();
  }
}

/** @param {Line} line */
const sentence = ({ word, values }) => t(word, values);

/** @param {Line} line */
const readingLine = (line) =>
  html`<li class=${line.unknown ? 'unknown' : ''}>
    ${line.unknown ? html`<b aria-hidden="true">?</b> ` : nothing}${sentence(line)}
  </li>`;
