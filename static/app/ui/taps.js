import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';

/** @import { Field } from '../core/core.d.ts' */
/** @import { Control } from './field.js' */

let began = 0; // when the first of the taps came; 0 after the page was loaded

/**
 * A place to tap along with something, as large as a glove: what it holds are the
 * seconds of the taps, from the first. What follows from them is the core's.
 *
 * @param {Field} field
 * @param {Control} is
 */
export function taps({ letters = 0 }, { id, value = '', label, set }) {
  /** @param {Event} event */
  const tap = ({ timeStamp }) => {
    if (!value || !began) began = timeStamp;
    const at = ((timeStamp - began) / 1000).toFixed(2);
    const all = timeStamp === began ? at : `${value} ${at}`;
    if (all.length <= letters) set(all);
  };
  const count = value ? value.split(' ').length : 0;
  return html`<p class="label" id=${`${id}-label`}>${label}</p>
    <button type="button" class="tap" id=${id} aria-describedby=${`${id}-label`} @click=${tap}>
      ${t('bench.tap')} <b>${t('bench.taps', { count })}</b>
    </button>
    ${
      value
        ? html`<button type="button" class="quiet" @click=${() => set('')}>
            ${t('bench.taps-again')}
          </button>`
        : nothing
    }`;
}
