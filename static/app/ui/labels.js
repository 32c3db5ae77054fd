import { html, nothing } from 'lit-html';
import { hasWord, t } from '../words/catalogue.js';

/** @import { Field, Finding } from '../core/core.d.ts' */

/**
 * A label may be that of one calculation or of all that ask for the same.
 *
 * @param {string} op
 * @param {Field} field
 */
function word(op, { name }) {
  const own = `ask.${op}.${name}`;
  return hasWord(own) ? own : `ask.${name}`;
}

/**
 * The label of a calculation's field.
 *
 * @param {string} op
 * @param {Field} field
 */
export const label = (op, field) => t(word(op, field));

/**
 * An example of what it may hold, or its unit.
 *
 * @param {string} op
 * @param {Field} field
 */
export function hint(op, field) {
  const example = `${word(op, field)}.hint`;
  if (hasWord(example)) return html`<small>${t('bench.like', { example: t(example) })}</small>`;
  return field.unit ? html`<small>${t('bench.unit', { unit: field.unit })}</small>` : nothing;
}

/**
 * A finding beside a field, which names that by its label.
 *
 * @param {string} op
 * @param {Field} field
 * @param {Finding} found
 */
export const named = (op, field, found) =>
  found.values?.name === field.name
    ? { ...found, values: { ...found.values, name: `@${word(op, field)}` } }
    : found;
