import { html, nothing } from 'lit-html';
import { said } from '../ui/said.js';
import { fitted, roomFor } from '../ui/letters.js';
import { t, verbatim } from '../words/catalogue.js';
import { when } from '../words/dates.js';
import { drawn, Pad } from './pad.js';

/** Signing at one moment, on a screen. */
export class Signing {
  #account;
  #moment;
  #pad;

  /** @param {'arrival' | 'handover'} moment */
  constructor(account, moment) {
    this.#account = account;
    this.#moment = moment;
    this.#empty();
  }

  get #field() {
    return `points-${this.#moment}`;
  }

  #empty() {
    const { drafts, app } = this.#account;
    const { letters = 0 } = this.#account.question('points') ?? {};
    this.#pad = new Pad(drafts.get(this.#field) ?? '', letters, (points) => {
      if (points) drafts.put(this.#field, points);
      else drafts.drop(this.#field);
      app.redraw();
    });
  }

  draw() {
    const { state } = this.#account;
    const signature = state.signatures?.find(({ moment }) => moment === this.#moment);
    if (signature) return this.#signed(signature);
    if (!state.agreement) return html`<p>${t('visit.sign.nothing')}</p>`;
    return this.#form(state.agreement);
  }

  #form(agreement) {
    const account = this.#account;
    const field = `name-${this.#moment}`;
    const id = `visit-${field}`;
    const sign = async () => {
      const fact = {
        kind: 'signed',
        what: this.#moment,
        value: this.#pad.points(),
        text: agreement, // what is on the screen: the core refuses it if it has changed since
        signs: { name: account.typed(field) },
      };
      const fields = [this.#field, field];
      if (await account.tell(fact, this.#field, { fields, said: 'visit.sign.kept' })) this.#empty();
      account.app.redraw();
    };
    return html`
      <p>${t('visit.sign.how')}</p>
      ${this.#pad.draw()}
      <div class="field">
        <label for=${id}>${t('visit.sign.name')} <small>${t('visit.sign.name.hint')}</small></label>
        <input
          id=${id}
          .value=${account.typed(field)}
          autocomplete="off"
          @input=${({ target }) => account.drafts.put(field, fitted(target))}
        />
        ${roomFor(id, account.question('line')?.letters)}
      </div>
      ${said('', account.found.get(this.#field))}
      <p class="entry">
        <button type="button" ?disabled=${this.#pad.empty} @click=${sign}>
          ${t('visit.sign.keep')}
        </button>
        <button
          type="button"
          class="quiet"
          ?disabled=${this.#pad.empty}
          @click=${() => this.#pad.clear()}
        >
          ${t('visit.sign.clear')}
        </button>
      </p>
      ${this.#pad.empty ? html`<p class="kept">${t('visit.sign.not')}</p>` : nothing}
    `;
  }

  #signed(signature) {
    return html`
      <figure class="signed">
        ${drawn(signature.path, t(`visit.signed.${this.#moment}`))}
        <figcaption>${signedLine(signature)}</figcaption>
      </figure>
      ${changedSince(signature)}
      <button type="button" class="quiet" @click=${() => this.#account.undo(signature.id)}>
        ${t('visit.take-back')}
      </button>
    `;
  }
}

/** Who signed, and when. */
export const signedLine = ({ name, time }) =>
  [name ? verbatim(name) : '', when(time)].filter(Boolean).join(', ');

/** What is other now than what was signed. */
export const changedSince = ({ changed = [] }) =>
  changed.length
    ? html`<p class="finding" data-grade="doubt">
        ${t('visit.sign.changed', { what: changed.map((word) => t(word)).join(', ') })}
      </p>`
    : nothing;
