import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { settings } from '../store/settings.js';
import { radios } from '../ui/choice.js';
import { findings } from '../ui/findings.js';
import { t, text, verbatim } from '../words/catalogue.js';

/** @import { Card } from '../core/core.d.ts' */

/**
 * What a bike may have of its own, by its card: what -> the word for it, and of which part.
 *
 * @param {Partial<Card>} [card]
 * @returns {Map<string, [string, string]>}
 */
export function ownFigures({ circuits = [], bolts, filters } = {}) {
  const turned = (bolts ?? []).filter(({ purpose }) => purpose !== 'leave-alone');
  const changed = new Set((filters ?? []).map(({ circuit }) => circuit));
  return new Map([
    ...circuits.flatMap(({ id, role }) =>
      ['volume', ...(changed.has(id) ? ['volume-filter'] : []), 'grade'].map((w) =>
        entry(w, id, `@role.${role}`),
      ),
    ),
    ...turned.flatMap(({ id, place, purpose, seal }) =>
      ['thread', 'torque', 'size', ...(seal ? ['inner', 'outer', 'thickness'] : [])].map((w) =>
        entry(w, id, place || `@purpose.${purpose}`),
      ),
    ),
    ...(filters ?? []).map(({ id, place }) => entry('number', id, place || '@plan.filter')),
  ]);
}

/** @returns {[string, [string, string]]} */
const entry = (word, id, of) => [`${word}.${id}`, [`own.${word}`, of]];

const nameOf = (what, names) => {
  const [word = what, of = ''] = names.get(what) ?? [];
  return [t(word), text(of)].filter(Boolean).join(' · ');
};

/** The figures of this bike alone, and one more. */
export function figuresOf(telling, entries) {
  const { row, odd, card } = telling;
  const names = ownFigures(card);
  const list = row?.figures ?? [];
  return html`
    <p>${t('details.figures.how')}</p>
    ${
      list.length
        ? html`<ul class="own-figures">
            ${list.map((figure, n) => own(figure, names, telling, about(odd, n)))}
          </ul>`
        : nothing
    }
    ${findings(odd.filter(({ where }) => !isOfFigure.test(where)))}
    <details class="more" ?open=${fields.some((name) => entries.value(name))}>
      <summary>${t('details.figure.add')}</summary>
      ${form(telling, entries, names)}
    </details>
  `;
}

const isOfFigure = /^\/figures\/\d+\b/;
const about = (odd, n) =>
  odd.filter(({ where }) => where === `/figures/${n}` || where.startsWith(`/figures/${n}/`));

const own = ({ what, value, standing, why }, names, telling, odd) =>
  html`<li>
    <span
      ><strong>${nameOf(what, names)}: ${verbatim(value)}</strong>
      <small
        >${[t(`standing.${standing}`), why && verbatim(why)].filter(Boolean).join(': ')}</small
      ></span
    >
    <button
      type="button"
      class="quiet"
      aria-label=${t('details.figure.drop.of', { what: nameOf(what, names) })}
      @click=${() => telling.tell('figure-value', { kind: 'figure', what, value: '' })}
    >
      ${t('details.figure.drop')}
    </button>
    ${findings(odd)}
  </li>`;

const fields = ['figure-what', 'figure-value', 'figure-why', 'figure-standing'];

function form(telling, entries, names) {
  const standing = entries.value('figure-standing', 'measured');
  const keep = async (e) => {
    e.preventDefault();
    const { drafts } = telling;
    const kept = await telling.tell(
      'figure-value',
      {
        kind: 'figure',
        what: entries.value('figure-what'),
        value: entries.value('figure-value').trim(),
        text: entries.value('figure-why').trim(),
        signs: { standing, system: settings.system },
      },
      { drafts: fields.map((name) => drafts.key(name)) },
    );
    if (kept) telling.say(t('details.figure.kept'));
  };
  return html`<form @submit=${keep}>
    ${entries.field('figure-what', 'details.figure.what', {
      choice: { words: [...names.keys()], names },
    })}
    ${entries.field('figure-value', 'details.figure.value')}
    ${radios('details.figure.standing', 'standing', standing, ['measured', 'decided'], (value) =>
      entries.choose('figure-standing', value),
    )}
    ${entries.field('figure-why', 'details.figure.why', { letters: limits.remark })}
    <button type="submit">${t('details.figure.keep')}</button>
  </form>`;
}
