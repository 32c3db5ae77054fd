import { html, nothing } from 'lit-html';
import { cut } from '../words/cut.js';
import { t } from '../words/catalogue.js';

// How many letters a field takes. A browser's own `maxlength` drops the rest of what is
// pasted without a word, and may drop half of its last character.

const told = (/** @type {string} */ id) => `${id}-letters`;

/**
 * What stands in a field that was just typed in, once it holds no more than it takes.
 * To be asked first at each input; `roomFor` stands below the field.
 *
 * @param {any} field
 * @returns {string}
 */
export function fitted(field) {
  const line = document.getElementById(told(field.id));
  if (!line) return field.value;
  const { text, left } = cut(field.value, Number(line.dataset.letters));
  line.hidden = left === 0;
  if (left) field.value = text;
  return field.value;
}

/**
 * The line that says, once it was, that something was cut off in the field of that id.
 *
 * @param {string} id
 * @param {number | undefined} letters nothing for a field that takes any number
 */
export const roomFor = (id, letters) =>
  letters
    ? html`<p id=${told(id)} class="cut" data-letters=${letters} role="status" hidden>
        ${t('field.cut', { count: letters })}
      </p>`
    : nothing;
