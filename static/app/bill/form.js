import { html } from 'lit-html';
import { t } from '../words/catalogue.js';
import { typedField } from './field.js';
import { billLine } from './line.js';
import { said } from '../ui/said.js';

const counting = ['currency', 'prices', 'tax', 'rounding', 'cash', 'discount'];
const who = ['number', 'seller', 'customer', 'remark'];

/** All that is typed for an estimate or a bill, with what was found beside it. */
export function billForm(papers, found, act) {
  const { typed, fields } = papers;
  const form = { fields, found, act };
  const rows = fields.find(({ name }) => name === 'lines').rows;
  const kinds = rows.find(({ name }) => name === 'kind');
  const lines = typed.lines ?? [];
  return html`
    <section>
      <h2>${t('bill.lines')}</h2>
      ${lines.map((line, n) => billLine({ ...form, fields: rows }, papers, line, n))}
      ${said(
        '',
        found.filter(({ where }) => where === '/lines'),
      )}
      ${adding(kinds, act)}
    </section>
    ${group('bill.counting', counting, form, papers, !typed.currency)}
    ${group('bill.who', who, form, papers, !typed.seller)}
  `;
}

const adding = ({ words, family }, act) => {
  const add = ({ target }) => {
    const kind = target.value;
    target.value = '';
    if (kind) act.add(kind);
  };
  return html`<div class="field">
    <label for="bill-add">${t('bill.add')}</label>
    <select id="bill-add" @change=${add}>
      <option value="">${t('bill.add.which')}</option>
      ${words.map((word) => html`<option value=${word}>${t(`${family}${word}`)}</option>`)}
    </select>
  </div>`;
};

function group(word, names, form, { typed, opened }, begin) {
  // What was opened stays so: it must not close under the fingers.
  if (
    begin ||
    form.found.some(({ where, grade }) => grade !== 'note' && names.includes(where.slice(1)))
  )
    opened.add(word);
  return html`<details class="more" ?open=${opened.has(word)}>
    <summary>${t(word)}</summary>
    ${names.map((name) => typedField(form, typed, name, ''))}
  </details>`;
}
