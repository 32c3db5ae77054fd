import { html, nothing } from 'lit-html';
import { own } from '../site/own.js';
import { plain, search } from '../words/search.js';
import { t, text } from '../words/catalogue.js';

const many = 12; // from so many bikes on one may want to search
const most = 50; // bikes to choose from at once

/**
 * The choice of another bike: twins and those seen last come first, and of many one searches.
 *
 * @param {any} telling
 * @param {string} name of what is chosen: its id stands in `telling.chosen` under it
 * @param {string} word of its label
 * @param {[id: string, word: string][]} [more] what may be chosen beside the bikes
 */
export function chooser(telling, name, word, more = []) {
  const { others, chosen } = telling;
  const id = `details-${name}`;
  const now = own(chosen, name) ?? '';
  const typed = String(own(chosen, `${name}-find`) ?? '');
  const named = others.map((other) => ({ id: other, name: telling.nameOf(other) }));
  /** @type {{ id: string, name: string, text: string }[]} */
  const lines = named.map((bike) => ({ ...bike, text: plain(bike.name) }));
  const fits = /** @type {typeof lines} */ (search(lines, typed)).slice(0, most);
  const options = [...more.map(([value, is]) => ({ id: value, name: t(is) })), ...fits];
  return html`${
      others.length > many
        ? html`<p class="ask">
            <label for=${`${id}-find`}>${t('bikes.search')}</label>
            <input
              id=${`${id}-find`}
              type="search"
              autocomplete="off"
              .value=${typed}
              @input=${({ target }) => telling.choose({ [`${name}-find`]: target.value })}
            />
          </p>`
        : nothing
    }
    <p class="ask">
      <label for=${id}>${t(word)}</label>
      <select id=${id} @change=${({ target }) => telling.choose({ [name]: target.value })}>
        <option value="">${t('details.choose')}</option>
        ${options.map(
          (option) =>
            html`<option value=${option.id} ?selected=${option.id === now}>
              ${text(option.name)}
            </option>`,
        )}
      </select>
    </p>`;
}
