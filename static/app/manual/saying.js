import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { findings } from '../ui/findings.js';
import { t } from '../words/catalogue.js';
import { shortened } from '../words/cut.js';
import { linesOf, wordsOf } from './lines.js';
import { aspectOf, nameOf, thingOf } from './what.js';

const wordsAtOnce = 40; // of a line that are drawn, around those that are chosen
const nameOfLine = 80; // letters by which a line is told

/** A person says what a piece of a page is: which words of which line, of what, and what of it. */
export class Saying {
  page;
  #line = 0;
  #from = 0; // words of the line
  #to = 0;
  #thing;
  /** @type {any[]} why it can't be that */
  #found = [];
  #lines;
  #redraw;
  #tell;

  /**
   * Begins with the word at a place of the page's text; `near` are readings of the page.
   *
   * @param {any} page
   * @param {number} place
   * @param {any[]} near
   * @param {() => void} redraw
   * @param {(said: any) => Promise<any[]>} tell resolves to what is wrong with it
   */
  constructor(page, place, near, redraw, tell) {
    this.page = page;
    this.#redraw = redraw;
    this.#tell = tell;
    this.#lines = linesOf(page.text).filter(({ text }) => text.trim());
    const line = this.#lines.findLastIndex?.(({ start }) => start <= place) ?? 0;
    this.#go(Math.max(line, 0), place);
    const [here] = near.filter(({ quote }) => {
      const [from, to] = [page.bytes.at(quote.from), page.bytes.at(quote.to)];
      const { start, text } = this.#here;
      return from < start + text.length && to > start;
    });
    this.#thing = here ? thingOf(here.what) : undefined;
  }

  get #here() {
    return this.#lines.at(this.#line) ?? { text: '', start: 0 };
  }

  get #words() {
    return wordsOf(this.#here);
  }

  /** The words about those that are chosen: of a line that is a whole page the others would be no help. */
  get #shown() {
    const first = Math.max(0, this.#from - wordsAtOnce / 2);
    return this.#words
      .map((word, n) => ({ ...word, n }))
      .slice(first, Math.max(this.#to + wordsAtOnce / 2, first + wordsAtOnce));
  }

  #go(line, place) {
    this.#line = line;
    const word = this.#words.findIndex(({ to }) => to > place);
    this.#from = this.#to = Math.max(word, 0);
  }

  /** A word beside those that are chosen is added; one among them is chosen alone. */
  #pick(n) {
    if (n >= this.#from && n <= this.#to) this.#from = this.#to = n;
    else [this.#from, this.#to] = [Math.min(n, this.#from), Math.max(n, this.#to)];
    this.#found = [];
    this.#redraw();
  }

  async #say(what) {
    const { bytes } = this.page;
    const chosen = this.#words.slice(this.#from, this.#to + 1);
    const quote = { from: bytes.of(chosen[0].from), to: bytes.of(chosen.at(-1)?.to ?? 0) };
    this.#found = await this.#tell({ what, quote });
    this.#redraw();
  }

  draw() {
    const all = limits.whats ?? [];
    const things = [...new Set(all.map(thingOf))];
    const choose = (to) => (event) => {
      to(event.target.value);
      this.#redraw();
    };
    return html`
      <h1 tabindex="-1">${t('manual.saying')}</h1>
      <div class="field">
        <label for="line">${t('manual.line')}</label>
        <select
          id="line"
          class="written"
          dir="auto"
          @change=${choose((n) => this.#go(Number(n), 0))}
        >
          ${this.#lines.map(
            ({ text }, n) =>
              html`<option value=${n} .selected=${n === this.#line}>
                ${shortened(text.trim(), nameOfLine)}
              </option>`,
          )}
        </select>
      </div>
      <div class="field" role="group" aria-label=${t('manual.words')}>
        <p class="label">${t('manual.words')}</p>
        <div class="entry written" dir="auto">
          ${this.#shown.map(
            ({ text, n }) =>
              html`<button
                type="button"
                class="quiet"
                aria-pressed=${n >= this.#from && n <= this.#to}
                @click=${() => this.#pick(n)}
              >
                ${text}
              </button>`,
          )}
        </div>
      </div>
      <div class="field">
        <label for="thing">${t('manual.thing')}</label>
        <select id="thing" @change=${choose((thing) => (this.#thing = thing))}>
          ${this.#thing === undefined ? html`<option>${t('bench.choose')}</option>` : nothing}
          ${things.map(
            (thing) =>
              html`<option value=${thing} .selected=${thing === this.#thing}>
                ${t(thing ? `manual.of.${thing}` : 'manual.cell.bike')}
              </option>`,
          )}
        </select>
      </div>
      <div role="status">${findings(this.#found)}</div>
      ${
        this.#thing === undefined
          ? nothing
          : html`<ul class="choices">
              ${all
                .filter((what) => thingOf(what) === this.#thing)
                .map(
                  (what) =>
                    html`<li>
                      <button
                        type="button"
                        class="quiet"
                        aria-label=${nameOf(what)}
                        @click=${() => this.#say(what)}
                      >
                        ${t(`manual.is.${aspectOf(what)}`)}
                      </button>
                    </li>`,
                )}
            </ul>`
      }
    `;
  }
}
