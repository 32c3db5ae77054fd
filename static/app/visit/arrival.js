import { html, nothing } from 'lit-html';
import { draftsWritten } from '../store/drafts.js';
import { draftMark } from '../ui/draft-mark.js';
import { settings } from '../store/settings.js';
import { t } from '../words/catalogue.js';
import { asked, currency, currencyOf } from './asked.js';

/** What is told when the bike comes in: one form, of which each field is a fact of its own. */
export function arrival(account) {
  const { asks = [] } = account.state;
  const open = asks.some(({ name }) => account.drafts.get(name) !== undefined);
  return html`<form
    class="arrival"
    @submit=${(event) => {
      event.preventDefault();
      return keep(account);
    }}
  >
    ${asks.map(({ name, kind }) => html`${asked(account, name, { kept: account.said(name)?.value })} ${kind === 'money' ? currency(account, name) : nothing}`)}
    ${draftMark(open ? (draftsWritten() ? 'written' : 'pending') : '')}
    <button type="submit">${t('visit.arrival.keep')}</button>
  </form>`;
}

/** Tells what was changed, one thing after the other; what is refused stays in its field. */
async function keep(account) {
  const money = currencyOf(account);
  let all = true;
  for (const { name, kind, lines } of account.state.asks) {
    const typed = account.drafts.get(name);
    const before = account.said(name);
    const same =
      kind === 'money' && before?.money?.currency !== money
        ? false
        : typed === (before?.value ?? '');
    if (typed === undefined) continue;
    if (same) {
      account.drafts.drop(name);
      account.found.delete(name);
      continue;
    }
    const signs =
      kind === 'money'
        ? { currency: money }
        : kind === 'distance'
          ? { system: settings.system }
          : {};
    const fact = { kind: 'said', what: name, [lines ? 'text' : 'value']: typed, signs };
    if (!(await account.tell(fact, name, { fields: [name], said: '' }))) all = false;
  }
  account.app.say(all ? t('visit.kept') : '');
  account.app.redraw();
}
