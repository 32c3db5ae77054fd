import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { hasWord, t, text } from '../words/catalogue.js';
import { fitted, roomFor } from './letters.js';
import { tied } from './said.js';
import { taps } from './taps.js';

/** @import { Field, Finding } from '../core/core.d.ts' */

/**
 * What a person types or chooses in. `type` is called at each letter, `set` with
 * what is entered.
 *
 * `found` is what was found about it, which stands below. `names` are those of a choice among things: a word, and where the thing is; `none` is
 * the word for none of them.
 *
 * @typedef {{ id: string, value: any, label: unknown, hint?: unknown,
 *   found?: Finding[],
 *   names?: Map<string, [string, string?]>, none?: string, type: (text: string) => void, set: (value: any) => void }} Control
 *
 * @param {Field} field
 * @param {Control} is
 */
export function control(field, is) {
  if (field.kind === 'yes') return tick(is);
  if (field.kind === 'taps') return taps(field, is);
  return field.kind === 'choice' ? choice(field, is) : entry(field, is);
}

/** @param {Control} is */
const tick = ({ id, value, label, found, set }) =>
  html`<label class="ticked">
    <input
      id=${id}
      type="checkbox"
      ${tied(id, found)}
      .checked=${live(Boolean(value))}
      @change=${(/** @type {any} */ { target }) => set(target.checked)}
    />
    ${label}
  </label>`;

/**
 * @param {Field} field
 * @param {Control} is
 */
function choice(
  { name, words = [], family = '' },
  { id, value = '', label, found, names, none = 'bench.choose', set },
) {
  // What an earlier version asked for stands there as long as it is the answer.
  const once = !words.includes(value) && hasWord(`${family}${value}`) ? [value] : [];
  /** @param {string} word */
  const named = (word) => {
    const [is = `${family}${word}`, place] = names?.get(word) ?? [];
    return place ? `${t(is)} · ${text(place)}` : t(is);
  };
  return html`<label for=${id}>${label}</label>
    <select
      id=${id}
      name=${name}
      ${tied(id, found)}
      @change=${(/** @type {any} */ { target }) => set(target.value)}
    >
      ${['', ...words, ...once].map(
        (word) =>
          html`<option value=${word} .selected=${live(word === value)}>
            ${word ? named(word) : t(none)}
          </option>`,
      )}
    </select>`;
}

/**
 * @param {Field} field
 * @param {Control} is
 */
const entry = (field, { id, value = '', label, hint, found, type, set }) => {
  const { kind, low = 0, high, lines } = field;
  return html`<label for=${id}>${label} ${hint}</label>
    ${kind === 'share' ? slider({ value, label, low, high, set }) : nothing}
    ${(lines ? area : line)(field, { id, value, found, type, set })}`;
};

/** How far a share is slid at once, in percent: a glove moves no finer. */
export const slideStep = 5;

/**
 * A share is slid with a glove on, or typed below.
 *
 * @param {Omit<Control, 'id' | 'type'> & { low: number, high: number | undefined }} is
 */
const slider = ({ value, label, low, high, set }) =>
  html`<input
    type="range"
    aria-label=${label}
    min=${low}
    max=${high ?? nothing}
    step=${slideStep}
    .value=${live(String(parseFloat(value) || 0))}
    @change=${(/** @type {any} */ { target }) => set(`${target.value} %`)}
  />`;

/** @type {(field: Field, is: Omit<Control, 'label'>) => unknown} */
const area = ({ name, letters }, { id, value, found, type, set }) =>
  html`<textarea
      id=${id}
      name=${name}
      ${tied(id, found)}
      rows="4"
      .value=${live(value)}
      @input=${(/** @type {any} */ { target }) => type(fitted(target))}
      @change=${(/** @type {any} */ { target }) => set(target.value)}
    ></textarea>
    ${roomFor(id, letters)}`;

/** @type {(field: Field, is: Omit<Control, 'label'>) => unknown} */
const line = ({ name, letters }, { id, value, found, type, set }) =>
  html` <input
      id=${id}
      name=${name}
      ${tied(id, found)}
      .value=${live(value)}
      autocomplete="off"
      autocapitalize="none"
      spellcheck="false"
      enterkeyhint="done"
      @input=${(/** @type {any} */ { target }) => type(fitted(target))}
      @change=${(/** @type {any} */ { target }) => set(target.value)}
    />
    ${roomFor(id, letters)}`;
