import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { findings } from '../ui/findings.js';
import { fitted, roomFor } from '../ui/letters.js';
import { t } from '../words/catalogue.js';
import { linesOf, markedLine } from './lines.js';
import { isDifference } from './reading.js';
import { nameOf, thingOf, valueOf } from './what.js';

/**
 * What is asked about a reading that isn't sure, or about several of which one holds: what
 * is doubted, each with its words in the text, and what can be done about it.
 *
 * @param {any[]} list
 * @param {{ choose: (one: any, typed?: string) => void, leave: () => void, remove: (n: number) => void }} acts
 * @param {{ number: number, count: number, found: any[], pageOf: (page: any) => string, wordsInCard: (one: any) => string, typed: string, type: (text: string) => void }} is
 */
export function question(list, acts, { number, count, found, pageOf, wordsInCard, typed, type }) {
  const first = list.find(({ text }) => text) ?? list[0];
  const differ = new Set(list.map(({ text }) => text)).size > 1;
  // That the page says something else too stands there, where several are shown.
  const told = (found) => differ && isDifference(found) && isAmong(list, found);
  const doubts = ({ doubts: all = [] }) => all.filter((one) => !told(one));
  const enter = (event) => {
    event.preventDefault();
    const text = event.target.elements.figure.value.trim();
    if (!text) return;
    type('');
    acts.choose(first, text);
  };
  const all = differ ? [] : list.flatMap(doubts);
  const before = [...all, ...found].some(isDifference) && !differ && wordsInCard(first);
  // Of what the bike is: a page may be of another.
  const ofOther = !thingOf(first.what) && list.some(({ n }) => n !== first.n);
  const removal = ({ n }) =>
    html`<button type="button" class="quiet" @click=${() => acts.remove(n)}>
      ${t('manual.remove')}
    </button>`;
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
    ${differ ? html`<p>${t(ofOther ? 'manual.two-bikes' : 'manual.several')}</p>` : nothing}
    ${findings(uniqueOf([...all, ...found.filter((one) => !told(one))]))}
    ${
      before
        ? html`<p class="line">${t('manual.in-card')}</p>
            ${block(before)}`
        : nothing
    }
    ${before ? html`<p class="line">${t('manual.in-page')}</p>` : nothing}
    ${list.map((one) =>
      differ
        ? html`${inText(one, pageOf)} ${findings(uniqueOf(doubts(one)))}
            <p class="entry">${take(one)} ${ofOther ? removal(one) : nothing}</p>`
        : inText(one, pageOf),
    )}
    <p class="entry">
      ${differ ? nothing : take(first)}
      <button type="button" class="quiet" @click=${acts.leave}>
        ${t(before ? 'manual.keep' : 'manual.leave')}
      </button>
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

/** Whether what a finding names beside a reading is one of those that are shown. */
const isAmong = (list, { code, values }) =>
  code !== 'reading-differs' || list.some(({ text }) => text === values?.has);

/** The lines of the page in which the words of a reading stand, with these marked, and which page it is. */
function inText({ quote, page }, pageOf) {
  const { bytes } = page;
  const [from, to] = [bytes.at(quote.from), bytes.at(quote.to)];
  const lines = linesOf(page.text).filter(
    ({ text, start }) => start < to && start + text.length > from,
  );
  const name = pageOf(page);
  const drawn = lines.map((line) => markedLine(line, [{ from, to, kind: 'ask' }]));
  return html`${name ? html`<p class="line">${name}</p>` : nothing} ${block(drawn)}`;
}

const block = (words) => html`<blockquote class="written quote" dir="auto">${words}</blockquote>`;

/** Each finding once, though it stands at several readings. */
function uniqueOf(list) {
  const all = new Map(list.map(({ where: _, ...one }) => [JSON.stringify(one), one]));
  return [...all.values()];
}
