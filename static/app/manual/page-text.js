import { afterFirstPaint } from '../core/start.js';
import { linesOf, markedLine } from './lines.js';

/** @import { Line, Mark } from './lines.js' */

const turn = 12; // ms of drawing between two pictures

/**
 * The text of a page, with what was read in it marked. A slow phone needs as long for its
 * hundreds of words as for all else on the screen: so they are drawn once, some lines a
 * picture, from the top, and only lines whose marks are others now are drawn again.
 */
export class PageText {
  element = document.createElement('div');
  #lines;
  #marked = new Map(); // line that stands -> its marks
  /** @type {Mark[]} */
  #marks = [];
  #most = 0;
  #next = 0; // line to look at
  #waits = false;

  /** @param {string} text */
  constructor(text) {
    this.#lines = linesOf(text).filter((line) => line.text.trim());
    this.element.className = 'written page-text';
    this.element.dir = 'auto';
    this.element.addEventListener('click', ({ target }) => {
      const word = /** @type {Element} */ (target).closest('[data-from]');
      if (word instanceof HTMLElement) this.tapped(Number(word.dataset.from));
    });
  }

  /** How many lines there are. */
  get length() {
    return this.#lines.length;
  }

  /** What a word does that is tapped, by the place of its first letter. */
  tapped = (/** @type {number} */ _) => {};

  /**
   * Shows so many lines at most, with their marks.
   *
   * @param {Mark[]} marks
   * @param {number} most
   */
  show(marks, most) {
    this.#marks = marks;
    this.#most = Math.min(most, this.#lines.length);
    this.#next = 0;
    this.#wait();
  }

  #wait() {
    if (this.#waits) return;
    this.#waits = true;
    afterFirstPaint(() => {
      this.#waits = false;
      this.#draw();
    });
  }

  #draw() {
    const end = performance.now() + turn;
    const { children } = this.element;
    for (const line of this.#lines.slice(this.#next, this.#most)) {
      if (performance.now() > end) return this.#wait();
      const before = children.item(this.#next++);
      const last = line.start + line.text.length;
      const here = this.#marks.filter(({ from, to }) => from < last && to > line.start);
      const marked = JSON.stringify(here);
      if (this.#marked.get(line) === marked) continue;
      this.#marked.set(line, marked);
      if (before) before.replaceWith(markedLine(line, here));
      else this.element.append(markedLine(line, here));
    }
  }
}
