import { html, nothing } from 'lit-html';
import { t, text, when } from '../words.js';

const longest = 120; // letters of a name in a list

/** A name from a card, short enough for a list. */
export const short = (name) => {
  const plain = text(name);
  return plain.length > longest ? `${plain.slice(0, longest)}…` : plain;
};

/** What a list shows of a bike; leads to `href`. */
export const bikeLine = (row, href) => html`<a href=${href}>${bikeFacts(row)}</a>`;

/** The same, without leading anywhere. */
export function bikeFacts({ bike, twin, changed }) {
  const { name, years, layout, invented, oils = [], gaps, unfinished } = bike;
  const [oil] = oils;
  const missing = gaps
    ? html`<span class="gaps"
        >? ${t(gaps === 1 ? 'bikes.gap' : 'bikes.gaps', { count: gaps })}</span
      >`
    : nothing;
  return html`<span class="who">
      <strong>${short(name) || t('bikes.unnamed')}</strong>
      <span>${years} ${t(layout)}</span>
      ${twin ? html`<span>${t('bikes.version', { date: when(changed) })}</span>` : nothing}
      ${invented ? html`<span>${t('example')}</span>` : nothing} ${missing}
      ${unfinished ? html`<span class="gaps">${t('bikes.unfinished')}</span>` : nothing}
    </span>
    <span class="oil">
      ${due(oil?.due?.texts?.[0])}
      <span>${oil?.grades?.[0]}</span>
    </span>`;
}

const due = (volume) =>
  volume
    ? html`<span class="value">${text(volume)}</span>`
    : html`<span class="unknown">${t('not-known')}</span>`;

/** The field in which one searches; `find` is told what stands there at each keystroke. */
export const finder = (typed, find, word = 'bikes.search') =>
  html`<div class="ask">
    <label for="find">${t(word)}</label>
    <input
      id="find"
      type="search"
      autocomplete="off"
      autocapitalize="none"
      spellcheck="false"
      enterkeyhint="search"
      .value=${typed}
      @input=${({ target }) => find(target.value)}
    />
  </div>`;

/** The button that draws further lines, if there are any. */
export const more = (left, further) =>
  left > 0
    ? html`<p>
        <button type="button" class="quiet" @click=${further}>
          ${t('bikes.more', { count: left })}
        </button>
      </p>`
    : nothing;
