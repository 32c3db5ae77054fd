import { html, nothing } from 'lit-html';
import { amount, money, percent } from '../words/money.js';
import { t, text, verbatim } from '../words/catalogue.js';
import { day } from '../words/dates.js';

/** What the paper is called: "Bill 2026-17". */
export const title = ({ what, counted: typed }) =>
  [t(`bill.what.${what}`), typed.number].filter(Boolean).join(' ');

/** An estimate or bill as it is printed; every sum on it is the core's. */
export function billPaper(papers, sums) {
  const { counted: typed, what, job } = papers;
  const { taxes = [] } = sums;
  const { odometer } = job.state.summary;
  // The day on which it was kept, else today's.
  const kept = papers.changed() ? undefined : papers.paper(what)?.time;
  return html`
    <div class="two">${block(typed.seller)} ${block(typed.customer)}</div>
    <h1>${title(papers)}</h1>
    <p>
      ${day(kept ?? new Date().toISOString())} · ${text(job.name)}
      ${odometer ? html` · ${t('bill.odometer', { value: text(odometer) })}` : nothing}
    </p>
    <table class="money">
      <tbody>
        ${sums.lines.map((line, n) => row(typed.lines[n], line, sums, taxes.length > 1))}
      </tbody>
      <tbody class="sums">
        ${totals(sums, taxes)}
      </tbody>
    </table>
    ${what === 'estimate' ? html`<p>${t('bill.estimate.note')}</p>` : compared(sums)}
    ${block(typed.remark)}
    ${what === 'estimate' ? html`<p class="sign">${t('paper.sign')}</p>` : nothing}
  `;
}

const block = (written) => (written ? html`<p class="lines">${verbatim(written)}</p>` : nothing);

function row({ text: name, kind }, line, sums, several) {
  const { count, unit, price, discount, amount: sum, rate } = line;
  const how = [
    count === '1' && !unit
      ? ''
      : t('bill.times', { count: amount(count, unit), price: money(price, sums) }),
    discount ? t('bill.less', { amount: money(discount, sums) }) : '',
    several ? t('bill.rate', { rate: percent(rate) }) : '',
  ].filter(Boolean);
  return html`<tr>
    <td>
      ${text(name || `@bill.kind.${kind}`)}
      ${how.length ? html`<small>${how.join(', ')}</small>` : nothing}
    </td>
    <td>${money(sum, sums)}</td>
  </tr>`;
}

function totals(sums, taxes) {
  const gross = sums.prices === 'gross';
  const line = (word, value, values) =>
    html`<tr>
      <td>${t(word, values)}</td>
      <td>${money(value, sums)}</td>
    </tr>`;
  const tax = ({ rate, base, tax: value }) =>
    line(gross ? 'bill.tax-in' : 'bill.tax', value, {
      rate: percent(rate),
      base: money(base, sums),
    });
  return html`
    ${sums.discount ? html`${line('bill.sum', sums.sum)} ${line('bill.discount', -sums.discount)}` : nothing}
    ${taxes.length && !gross ? html`${line('bill.net', sums.net)} ${taxes.map(tax)}` : nothing}
    ${sums.rounding ? line('bill.rounded', sums.rounding) : nothing}
    <tr class="total">
      <th scope="row">${t('bill.total')}</th>
      <td>${money(sums.total, sums)}</td>
    </tr>
    ${gross ? taxes.map(tax) : nothing}
  `;
}

function compared(sums) {
  const { estimate, more, less } = sums;
  if (estimate === undefined) return nothing;
  const word = more ? 'bill.more-than' : less ? 'bill.less-than' : 'bill.as-estimate';
  return html`<p>
    ${t(word, { amount: money(more ?? less, sums), estimate: money(estimate, sums) })}
  </p>`;
}
