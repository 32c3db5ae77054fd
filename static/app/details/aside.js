import { html } from 'lit-html';
import { limits } from '../core/limits.js';
import { radios } from '../ui/choice.js';
import { said } from '../ui/said.js';
import { t } from '../words/catalogue.js';

/** Laying the bike aside, with its record, and taking it up again. */
export function asideOf(telling) {
  const { row, chosen, found } = telling;
  const { aside = limits.aside?.[0] } = chosen;
  const tell = (told, word) => async () => {
    if (await telling.tell('aside', told)) telling.say(t(word));
  };
  const about = said('', found.get('aside'));
  if (row?.aside)
    return html`<p>${t('details.aside.is')}</p>
      <button type="button" class="quiet" @click=${tell({ kind: 'back' }, 'details.aside.back')}>
        ${t('details.aside.take-up')}
      </button>
      ${about}`;
  return html`<details class="more">
    <summary>${t('details.aside.lay')}</summary>
    <p>${t('details.aside.how')}</p>
    ${radios('details.aside.why', 'bike.aside', aside, limits.aside ?? [], (value) =>
      telling.choose({ aside: value }),
    )}
    <button type="button" @click=${tell({ kind: 'aside', what: aside }, 'details.aside.laid')}>
      ${t('details.aside.lay')}
    </button>
    ${about}
  </details>`;
}
