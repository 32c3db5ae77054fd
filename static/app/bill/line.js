import { html, nothing } from 'lit-html';
import { money } from '../words/money.js';
import { t } from '../words/catalogue.js';
import { textField, typedField } from './field.js';

const more = ['discount', 'tax', 'kind'];

/** One line of a bill: what, how much, the price, and what it comes to. */
export function billLine(form, papers, line, n) {
  const { ok } = papers.answer;
  const at = `/lines/${n}`;
  const amiss = ({ where }) => more.some((name) => where === `${at}/${name}`);
  if (form.found.some(amiss)) papers.opened.add(line);
  const remove = () => {
    papers.typed.lines = papers.typed.lines.filter((other) => other !== line);
    form.act.change();
  };
  return html`<fieldset class="bill-line">
    <legend>
      ${t('bill.line', { number: n + 1 })}
      ${ok?.lines?.at(n) ? html`<span class="value">${money(ok.lines.at(n).amount, ok)}</span>` : nothing}
    </legend>
    ${textField(form, line, n)} ${typedField(form, line, 'count', at)}
    ${typedField(form, line, 'price', at)}
    <details class="wide" ?open=${papers.opened.has(line)}>
      <summary>${t('bill.line.more')}</summary>
      <div class="fields">${more.map((name) => typedField(form, line, name, at))}</div>
      <button type="button" class="quiet" @click=${remove}>${t('bill.remove')}</button>
    </details>
  </fieldset>`;
}
