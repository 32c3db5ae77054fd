import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { hasWord, t } from '../words/catalogue.js';
import { control } from '../ui/field.js';
import { said, tied } from '../ui/said.js';

/**
 * A question of a visit, answered in the field of that name, which is a draft until it is
 * told. `kept` is what was told before.
 *
 * @param {any} account
 * @param {string} name of the question
 * @param {{ field?: string, kept?: string, word?: string }} [more]
 */
export function asked(account, name, { field = name, kept = '', word = `visit.ask.${name}` } = {}) {
  const question = account.question(name);
  if (!question) return nothing;
  const put = (value) => account.drafts.put(field, value);
  const hint = `${word}.hint`;
  const is = {
    id: `visit-${field}`,
    value: account.typed(field, kept),
    found: account.found.get(field),
    label: t(word),
    hint: hasWord(hint) ? html`<small>${t(hint)}</small>` : nothing,
    none: 'visit.choose',
    type: put,
    set: (value) => {
      put(value);
      account.app.redraw();
    },
  };
  return html`<div class="field">
    ${question.kind === 'moment' ? moment(is) : control(question, is)} ${said(is.id, is.found)}
  </div>`;
}

/** A day and a time on the phone's own clock, "2026-11-30T17:00". */
function moment({ id, value, label, hint, found, set }) {
  const [day = '', time = ''] = value.split('T');
  const join = (...parts) => set(parts.some(Boolean) ? parts.join('T') : '');
  const part = (type, now, enter) => {
    return html`<p>
      <label for=${`${id}-${type}`}>${t(`visit.moment.${type}`)}</label>
      <input
        id=${`${id}-${type}`}
        type=${type}
        ${tied(id, found)}
        .value=${live(now)}
        @change=${({ target }) => enter(target.value)}
      />
    </p>`;
  };
  return html`<div class="moment" role="group" aria-labelledby=${id}>
    <p class="label" id=${id}>${label} ${hint}</p>
    ${part('date', day, (to) => join(to, time))} ${part('time', time, (to) => join(day, to))}
  </div>`;
}

/** The currency in which an amount is typed. */
export function currency(account, field) {
  const id = `visit-${field}-currency`;
  return html`<div class="field">
    <label for=${id}>${t('bill.ask.currency')} <small>${t('bill.ask.currency.hint')}</small></label>
    <input
      id=${id}
      .value=${live(account.typed('currency', account.currency))}
      autocomplete="off"
      spellcheck="false"
      @input=${({ target }) => account.drafts.put('currency', target.value)}
    />
  </div>`;
}

/** What is typed as the currency. */
export const currencyOf = (account) =>
  account.typed('currency', account.currency).trim().toUpperCase();
