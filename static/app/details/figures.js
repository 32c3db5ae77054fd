import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { settings } from '../store/settings.js';
import { radios } from '../ui/choice.js';
import { findings } from '../ui/findings.js';
import { t, text, verbatim } from '../words/catalogue.js';

const nameOf = (what, names) => {
  const [word = what, of = ''] = names.get(what) ?? [];
  return [t(word), text(of)].filter(Boolean).join(' · ');
};

/** The figures of this bike alone, and one more. */
export function figuresOf(telling, entries) {
  const { row, odd, places } = telling;
  const names = new Map(places.map(({ what, word, of }) => [what, [word, of]]));
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
