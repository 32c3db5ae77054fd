import { html, nothing, svg } from 'lit-html';
import { t } from '../words/catalogue.js';

// The field on which somebody signs, as the core has it: 1000 wide and 400 high.
const wide = 1000;
const high = 400;
const nearest = 6; // of those: points that lie nearer to each other show nothing

/** A field to sign on with a finger or a pen: strokes of points, kept as a draft. */
export class Pad {
  /** @type {[number, number][][]} */
  #strokes = [];
  #pointer; // id of the one that draws
  #letters; // that the points of a signature may have
  #kept; // called with the points, as text
  full = false;

  /**
   * @param {string} points as they were kept
   * @param {number} letters
   * @param {(points: string) => void} kept
   */
  constructor(points, letters, kept) {
    this.#letters = letters;
    this.#kept = kept;
    this.#strokes = points
      .split(';')
      .filter(Boolean)
      .map((stroke) => stroke.split(' ').map((p) => /** @type {any} */ (p.split(',').map(Number))));
  }

  /** The points as the core takes them. */
  points() {
    return this.#strokes.map((stroke) => stroke.map((p) => p.join(',')).join(' ')).join(';');
  }

  get empty() {
    return !this.#strokes.length;
  }

  clear() {
    this.#strokes = [];
    this.full = false;
    this.#kept('');
  }

  /** The path that is drawn. */
  #path() {
    return this.#strokes.map((stroke) => `M${stroke.map((p) => p.join(' ')).join('L')}`).join('');
  }

  #at({ clientX, clientY, currentTarget }) {
    const { left, top, width, height } = currentTarget.getBoundingClientRect();
    const within = (share, most) => Math.round(Math.min(Math.max(share, 0), 1) * most);
    return /** @type {[number, number]} */ ([
      within((clientX - left) / width, wide),
      within((clientY - top) / height, high),
    ]);
  }

  #show(field) {
    field.querySelector('path').setAttributeNS(null, 'd', this.#path());
  }

  #down(event) {
    if (this.#pointer !== undefined) return; // one finger signs
    this.#pointer = event.pointerId;
    event.currentTarget.setPointerCapture(event.pointerId);
    this.#strokes.push([this.#at(event)]);
    event.preventDefault();
  }

  #move(event) {
    if (event.pointerId !== this.#pointer || this.full) return;
    const stroke = this.#strokes[this.#strokes.length - 1];
    const [x, y] = this.#at(event);
    const [lastX, lastY] = stroke[stroke.length - 1];
    if (Math.hypot(x - lastX, y - lastY) < nearest) return;
    stroke.push([x, y]);
    this.full = this.points().length > this.#letters - 20;
    this.#show(event.currentTarget);
  }

  #up(event) {
    if (event.pointerId !== this.#pointer) return;
    this.#pointer = undefined;
    this.#kept(this.points());
  }

  draw() {
    const end = (event) => this.#up(event);
    return html`<svg
        class="pad"
        viewBox="0 0 ${wide} ${high}"
        role="img"
        aria-label=${t(this.empty ? 'visit.pad.empty' : 'visit.pad.written')}
        @pointerdown=${(event) => this.#down(event)}
        @pointermove=${(event) => this.#move(event)}
        @pointerup=${end}
        @pointercancel=${end}
      >
        ${svg`<line x1="60" x2="940" y1="320" y2="320" /><path d=${this.#path()} />`}
      </svg>
      ${this.full ? html`<p role="status">${t('visit.pad.full')}</p>` : nothing}`;
  }
}

/** A signature as it was drawn. */
export const drawn = (path, label) =>
  html`<svg class="signature" viewBox="0 0 ${wide} ${high}" role="img" aria-label=${label}>
    ${svg`<path d=${path} fill="none" stroke="#000" stroke-width="6" stroke-linecap="round" stroke-linejoin="round" />`}
  </svg>`;
