import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { hasWord, t } from '../words/catalogue.js';
import { control } from '../ui/field.js';
import { fitted, roomFor } from '../ui/letters.js';
import { said, tied } from '../ui/said.js';
import { own, setOwn } from '../site/own.js';

/** @import { Field } from '../core/core.d.ts' */
/** @import { Control } from '../ui/field.js' */

/** A field with its label, its hint and what was found about it. */
export function typedField({ fields, found, act }, values, name, at) {
  const field = fields.find((f) => f.name === name);
  const where = `${at}/${name}`;
  const hints = [`bill.ask.${name}.hint.${values.kind}`, `bill.ask.${name}.hint`];
  const hint = hints.find(hasWord);
  const type = (value) => {
    if (value) setOwn(values, name, value);
    else delete values[name];
  };
  const id = `bill${where.replaceAll('/', '-')}`;
  const about = found.filter((f) => f.where === where);
  return html`<div class="field">
    ${(field.words ? choice : control)(field, {
      id,
      found: about,
      value: own(values, name),
      label: t(`bill.ask.${name}`),
      hint: hint ? html`<small>${t(hint)}</small>` : nothing,
      type: (value) => {
        type(value);
        act.type();
      },
      set: (value) => {
        type(value);
        act.change();
      },
    })}
    ${said(id, about)}
  </div>`;
}

/**
 * One of a few words; only where nothing chosen means something is it offered.
 *
 * @param {Field} field
 * @param {Control} is
 */
const choice = ({ name, words, family = '' }, { id, value, label, found, set }) =>
  html`<label for=${id}>${label}</label>
    <select id=${id} name=${name} ${tied(id, found)} @change=${({ target }) => set(target.value)}>
      ${name === 'cash' ? html`<option value="">${t('bill.cash.exact')}</option>` : nothing}
      ${words?.map(
        (word) =>
          html`<option value=${word} .selected=${live(word === value)}>
            ${family ? t(`${family}${word}`) : word}
          </option>`,
      )}
    </select>`;

/** The field of what a line is: longer than others, and never empty of label. */
export const textField = ({ fields, act }, values, n) =>
  html`<div class="field wide">
    <label for=${`bill-text-${n}`}>${t('bill.ask.text')}</label>
    <input
      id=${`bill-text-${n}`}
      .value=${live(values.text ?? '')}
      autocomplete="off"
      @input=${({ target }) => {
        values.text = fitted(target);
        act.type();
      }}
      @change=${() => act.change()}
    />
    ${roomFor(`bill-text-${n}`, fields.find(({ name }) => name === 'text').letters)}
  </div>`;
