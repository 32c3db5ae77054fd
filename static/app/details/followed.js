import { html, nothing } from 'lit-html';
import { said } from '../ui/said.js';
import { t, text } from '../words/catalogue.js';

/** The card that the bike follows, and how it goes to another. */
export function followed(telling) {
  const { card, cards, chosen, found } = telling;
  const { follow = '' } = chosen;
  const now = telling.row?.card ?? card?.id;
  const go = async () => {
    if (!(await telling.tell('follow', { kind: 'follows', value: follow }))) return;
    telling.choose({ follow: '' });
    telling.say(t('details.card.followed'));
  };
  return html`
    <p>${card ? text(`${card.make} ${card.model}`) : t('details.card.gone')}</p>
    <details class="more">
      <summary>${t('details.card.other')}</summary>
      <p>${t('details.card.how')}</p>
      <p class="ask">
        <label for="details-follow">${t('details.card.which')}</label>
        <select
          id="details-follow"
          @change=${({ target }) => telling.choose({ follow: target.value })}
        >
          <option value="">${t('details.choose')}</option>
          ${cards
            .filter(({ id }) => id !== now)
            .map(
              ({ id, name }) =>
                html`<option value=${id} ?selected=${id === follow}>${text(name)}</option>`,
            )}
        </select>
      </p>
      ${
        follow
          ? html`<button type="button" @click=${go}>${t('details.card.follow')}</button>`
          : nothing
      }
    </details>
    ${said('', found.get('follow'))}
  `;
}
