import { html, nothing, svg } from 'lit-html';
import { encode } from 'uqr';
import { stayAwake } from '../../phone/lock.js';
import { t } from '../../words/catalogue.js';

const turnEvery = 2000; // ms; a camera needs less
const margin = 4; // modules, as the standard asks

/** QR codes on the screen, one after the other; the screen stays on until they are closed. */
export class ShownCodes {
  #list;
  #app;
  #at = 0;
  /** @type {ReturnType<typeof setInterval> | undefined} */
  #turning;

  /**
   * @param {string[]} list the texts of the codes
   * @param {any} app
   */
  constructor(list, app) {
    this.#list = list;
    this.#app = app;
    stayAwake(true);
  }

  close() {
    clearInterval(this.#turning);
    stayAwake(false);
  }

  /** @param {number} by */
  #step(by) {
    const { length } = this.#list;
    this.#at = (this.#at + by + length) % length;
    this.#app.redraw();
  }

  #turn() {
    clearInterval(this.#turning);
    this.#turning = this.#turning ? undefined : setInterval(() => this.#step(1), turnEvery);
    this.#app.redraw();
  }

  draw() {
    const said = t('qr.code', { n: this.#at + 1, of: this.#list.length });
    return html`
      <figure class="qr">
        ${picture(this.#list.at(this.#at) ?? '', said)}
        <figcaption>${said}</figcaption>
      </figure>
      ${this.#list.length > 1 ? this.#moving() : nothing}
      <details>
        <summary>${t('qr.as-text')}</summary>
        <p class="ask">
          <label for="qr-text">${t('qr.as-text.how')}</label>
          <textarea id="qr-text" readonly rows="6" .value=${this.#list.join('\n')}></textarea>
        </p>
      </details>
    `;
  }

  #moving() {
    return html`<p class="entry">
      <button type="button" @click=${() => this.#step(1)}>${t('qr.next')}</button>
      <button type="button" class="quiet" @click=${() => this.#step(-1)}>
        ${t('qr.previous')}
      </button>
      <button
        type="button"
        class="quiet"
        aria-pressed=${Boolean(this.#turning)}
        @click=${() => this.#turn()}
      >
        ${t('qr.turn')}
      </button>
    </p>`;
  }
}

/**
 * A code, dark on light in every theme: cameras want it so.
 *
 * @param {string} text
 * @param {string} label
 */
function picture(text, label) {
  const { data, size } = encode(text, { ecc: 'M', border: margin });
  const rows = data.map((row, y) =>
    row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')).join(''),
  );
  return html`<svg viewBox="0 0 ${size} ${size}" role="img" aria-label=${label}>
    ${svg`<rect width=${size} height=${size} fill="#fff"></rect><path d=${rows.join('')} fill="#000"></path>`}
  </svg>`;
}
