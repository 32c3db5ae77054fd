import { html, nothing, svg } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { call } from '../core/client.js';
import { onZoom, zoom } from '../phone/zoom.js';
import { set, settings } from '../store/settings.js';
import { t, text } from '../words/catalogue.js';
import { finding } from '../ui/findings.js';

/** @import { Answer, GaugeAnswer } from '../core/core.d.ts' */

const step = 0.5; // CSS pixels; a card's edge has hundreds of them
const margin = 6; // left of the first line

/** @type {Ruler | null} the ruler on the screen */
let shown = null;
onZoom(() => shown?.ask());

/**
 * A ruler drawn at true scale, to hold a piece against: matched once to the edge of
 * a bank card. `choose` is called with the size that a mark stands for.
 */
export class Ruler {
  #app;
  #choose;
  /** @type {Answer<GaugeAnswer> | null} */
  #answer = null;
  #open = false;
  /** @type {number | null} between the lines while it is being matched */
  #edge = null;
  /** @type {{ low?: number, high?: number }} between which an edge is believed */
  #bounds = {};

  constructor(app, choose) {
    this.#app = app;
    this.#choose = choose;
    shown = this;
    this.ask();
  }

  /** Asks the core how large everything is, and whether it is true. */
  async ask() {
    const { ratio, pinch } = zoom();
    const now = String(ratio);
    const kept = this.#edge ? { edge: String(this.#edge), ratio: now } : settings.gauge;
    const answer = await call('gauge', { ...kept, now, zoom: String(pinch) });
    this.#answer = answer;
    if (answer.ok) this.#bounds = answer.ok;
    if (shown === this) this.#app.redraw();
  }

  draw(size) {
    const { ok, findings = [] } = this.#answer ?? {};
    const turned = ({ target }) => {
      this.#open = target.open;
      if (this.#open) this.ask(); // the settings may have come since
    };
    return html`<details class="true-ruler more" ?open=${this.#open} @toggle=${turned}>
      <summary>${t('gauge.title')}</summary>
      ${ok ? this.#verdict(ok) : nothing} ${findings.map(finding)}
      ${this.#edge ? this.#match(this.#edge, ok) : this.#marks(ok, size)}
    </details>`;
  }

  /** @param {GaugeAnswer} answer */
  #verdict({ verdict, trusted }) {
    if (trusted && this.#edge) return nothing;
    return html`<p class="finding" data-grade=${trusted ? 'note' : 'doubt'}>
      ${t(verdict ?? '')}
    </p>`;
  }

  #turn(edge) {
    this.#edge = edge;
    return this.ask();
  }

  #marks(ok, size) {
    if (!ok) return nothing;
    return html`
      <h3>${t('gauge.marks')}</h3>
      <div class="marks">${ok.marks.map((mark) => this.#mark(mark, ok.trusted, size))}</div>
      ${scale(ok.ruler)} ${button('gauge.match', () => this.#turn(ok.edge))}
    `;
  }

  #mark({ across, text: length, size }, trusted, chosen) {
    const choose = async () => {
      await this.ask(); // not every browser reports that it zoomed
      if (this.#answer?.ok?.trusted) this.#choose(size);
    };
    const wide = 2 * across + 8;
    return html`<button
      type="button"
      class="quiet"
      aria-pressed=${size === chosen}
      ?disabled=${!trusted}
      @click=${choose}
    >
      <svg width=${wide} height=${across} aria-hidden="true">
        <circle cx=${across / 2} cy=${across / 2} r=${across / 2} />
        <rect x=${across + 8} y="0" width=${across} height=${across} />
      </svg>
      ${text(length)}
    </button>`;
  }

  /**
   * @param {number} edge
   * @param {GaugeAnswer | undefined} ok
   */
  #match(edge, ok) {
    const { low = 0, high = 0 } = this.#bounds;
    const widest = Math.min(document.documentElement.clientWidth - 2 * margin, high);
    const move = (/** @type {number} */ to) => this.#turn(Math.min(Math.max(to, low), widest));
    const save = async () => {
      const gauge = { edge: String(edge), ratio: String(zoom().ratio) };
      await this.#app.attempt(() => set('gauge', gauge));
      this.#turn(null);
    };
    return html`
      <p>${t('gauge.match.how')}</p>
      <svg
        class="card"
        width=${edge + 2 * margin}
        height="150"
        role="img"
        aria-label=${t('gauge.picture')}
      >
        <rect x=${margin} y="4" width=${edge} height="400" rx="12" />
      </svg>
      <input
        type="range"
        aria-label=${t('gauge.edge')}
        min=${low}
        max=${widest}
        step=${step}
        .value=${live(String(edge))}
        @input=${({ target }) => move(Number(target.value))}
      />
      <div class="entry">
        ${button('gauge.smaller', () => move(edge - step))}
        ${button('gauge.larger', () => move(edge + step))}
        <button type="button" ?disabled=${!ok?.trusted} @click=${save}>${t('gauge.keep')}</button>
        ${button('nav.back', () => this.#turn(null))}
      </div>
    `;
  }
}

const button = (word, act) =>
  html`<button type="button" class="quiet" @click=${act}>${t(word)}</button>`;

function scale(places) {
  const [end] = places.slice(-1);
  return html`<svg
    class="ruler"
    width=${end + 2}
    height="28"
    role="img"
    aria-label=${t('gauge.ruler')}
  >
    ${places.map((x, mm) => svg`<line x1=${x + 1} x2=${x + 1} y1="0" y2=${mm % 5 ? 16 : 26} />`)}
  </svg>`;
}
