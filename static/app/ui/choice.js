import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { t } from '../words/catalogue.js';

/**
 * A few possibilities of which one holds. `words` is the stem of their word
 * ids; `pick` is called with the one chosen; `apart` is what sets two with one
 * legend apart. A choice that was not saved goes back, so that it can be made again.
 *
 * @template {string} Value
 * @param {string} legend
 * @param {string} words
 * @param {Value | undefined} value
 * @param {Value[]} values
 * @param {(value: Value) => void} pick
 * @param {string} [apart]
 * @param {string} [about] id of what was found about it
 */
export function radios(legend, words, value, values, pick, apart = '', about = '') {
  const lines = values.map((v) => ({ id: v, label: t(`${words}.${v}`) }));
  return namedRadios(legend, lines, value, pick, apart, about);
}

/**
 * The same with labels that are no words: lines of id, label and the language of the label.
 *
 * @template {string} Value
 * @param {string} legend
 * @param {{ id: Value, label: string, lang?: string }[]} lines
 * @param {Value | undefined} value
 * @param {(value: Value) => void} pick
 * @param {string} [apart]
 * @param {string} [about]
 */
export const namedRadios = (legend, lines, value, pick, apart = '', about = '') =>
  html`<fieldset class="choice" aria-describedby=${about || nothing}>
    <legend>${t(legend)}</legend>
    ${lines.map(
      ({ id, label, lang }) =>
        html`<label
          ><input
            type="radio"
            name=${legend + apart}
            .checked=${live(id === value)}
            @change=${() => pick(id)}
          />
          <span lang=${lang ?? nothing} dir=${lang ? 'auto' : nothing}>${label}</span></label
        >`,
    )}
  </fieldset>`;

/**
 * Boxes that can be ticked: a legend and lines of id, label and whether it is on.
 *
 * @param {string} legend
 * @param {{ id?: string, label: unknown, on: unknown }[]} lines
 * @param {(id: any, on: boolean) => void} pick
 */
export const ticks = (legend, lines, pick) =>
  html`<fieldset class="choice">
    <legend>${t(legend)}</legend>
    ${lines.map(
      ({ id, label, on }) =>
        html`<label
          ><input
            type="checkbox"
            .checked=${Boolean(on)}
            @change=${(/** @type {any} */ e) => pick(id, e.target.checked)}
          />
          <span>${label}</span></label
        >`,
    )}
  </fieldset>`;
