import { html } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { t } from '../words/catalogue.js';

/**
 * A few possibilities of which one holds. `words` is the stem of their word
 * ids; `pick` is called with the one chosen; `apart` tells two with one legend from each other. A choice that was not saved goes
 * back, so that it can be made again.
 */
export function radios(legend, words, value, values, pick, apart = '') {
  return html`<fieldset class="choice">
    <legend>${t(legend)}</legend>
    ${values.map(
      (v) =>
        html`<label
          ><input
            type="radio"
            name=${legend + apart}
            .checked=${live(v === value)}
            @change=${() => pick(v)}
          />
          <span>${t(`${words}.${v}`)}</span></label
        >`,
    )}
  </fieldset>`;
}

/** Boxes that can be ticked: a legend and lines of id, label and whether it is on. */
export const ticks = (legend, lines, pick) =>
  html`<fieldset class="choice">
    <legend>${t(legend)}</legend>
    ${lines.map(
      ({ id, label, on }) =>
        html`<label
          ><input
            type="checkbox"
            .checked=${Boolean(on)}
            @change=${(e) => pick(id, e.target.checked)}
          />
          <span>${label}</span></label
        >`,
    )}
  </fieldset>`;
