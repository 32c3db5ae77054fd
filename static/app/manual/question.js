import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { findings } from '../ui/findings.js';
import { fitted, roomFor } from '../ui/letters.js';
import { t } from '../words/catalogue.js';
import { linesOf, markedLine } from './lines.js';
import { nameOf, valueOf } from './what.js';

/**
 * What is asked about a reading that isn't sure, or about several of which one holds: what
 * is doubted, each with its words in the text, and what can be done about it.
 *
 * @param {any[]} list
 * @param {{ choose: (one: any, typed?: string) => void, leave: () => void }} acts
 * @param {{ number: number, count: number, found: any[], typed: string, type: (text: string) => void }} is
 */
export function question(list, acts, { number, count, found, typed, type }) {
  const [first] = list;
  const several = list.length > 1;
  const doubts = ({ doubts: all = [] }) => all.filter((one) => !(several && isChoice(one)));
  const enter = (event) => {
    event.preventDefault();
    const text = event.target.elements.figure.value.trim();
    if (!text) return;
    type('');
    acts.choose(first, text);
  };
  const take = (one) =>
    one.text
      ? html`<button type="button" class="quiet" @click=${() => acts.choose(one)}>
          ${t('manual.take-one', { value: valueOf(one) })}
        </button>`
      : nothing;
  return html`<section class="question">
    <h2 id="next" tabindex="-1">
      ${t('manual.question', { number, count, what: nameOf(first.what) })}
    </h2>
    ${several ? html`<p>${t('manual.several')}</p>` : nothing}
    ${findings(uniqueOf([...(several ? [] : doubts(first)), ...found]))}
    ${list.map((one) =>
      several
        ? html`${inText(one)} ${findings(uniqueOf(doubts(one)))}
            <p class="entry">${take(one)}</p>`
        : inText(one),
    )}
    <p class="entry">
      ${several ? nothing : take(first)}
      <button type="button" class="quiet" @click=${acts.leave}>${t('manual.leave')}</button>
    </p>
    <details class="more" ?open=${Boolean(typed)}>
      <summary>${t('manual.type')}</summary>
      <form class="entry" @submit=${enter}>
        <label for="figure" class="hidden">${nameOf(first.what)}</label>
        <input
          id="figure"
          name="figure"
          autocomplete="off"
          autocapitalize="none"
          spellcheck="false"
          enterkeyhint="done"
          .value=${typed}
          @input=${({ target }) => type(fitted(target))}
        />
        <button type="submit">${t('manual.type.take')}</button>
        ${roomFor('figure', limits.entry)}
      </form>
    </details>
  </section>`;
}

/** Whether a finding says no more than that the page says something else too: that stands there. */
const isChoice = ({ code }) => ['manual-says-both', 'reading-twice'].includes(code);

/** The lines of the page in which the words of a reading stand, with these marked. */
export function inText({ quote, page }) {
  const { bytes } = page;
  const [from, to] = [bytes.at(quote.from), bytes.at(quote.to)];
  const lines = linesOf(page.text).filter(
    ({ text, start }) => start < to && start + text.length > from,
  );
  return html`<blockquote class="written quote" dir="auto">
    ${lines.map((line) => markedLine(line, [{ from, to, kind: 'ask' }]))}
  </blockquote>`;
}

/** Each finding once, though it stands at several readings. */
function uniqueOf(list) {
  const all = new Map(list.map(({ where: _, ...one }) => [JSON.stringify(one), one]));
  return [...all.values()];
}
