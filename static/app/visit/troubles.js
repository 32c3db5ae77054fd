import { html, nothing } from 'lit-html';
import { photos } from '../photos/photos.js';
import { namedRadios } from '../ui/choice.js';
import { said } from '../ui/said.js';
import { t, verbatim } from '../words/catalogue.js';
import { when as whenText } from '../words/dates.js';
import { amount } from './amount.js';
import { asked, currency, currencyOf } from './asked.js';
import { picturesOf } from './look-round.js';

/** Trouble found during the work, what the customer said of it, and a form for more. */
export function troubles(account, pictured) {
  const { troubles: list = [] } = account.state;
  return html`
    ${list.map((one) => trouble(account, one))}
    <details class="more" ?open=${Boolean(account.typed('trouble-text')) || pictured.waiting}>
      <summary>${t('visit.trouble.add')}</summary>
      ${asked(account, 'text', { field: 'trouble-text', word: 'visit.ask.trouble.text' })}
      ${asked(account, 'price', { field: 'trouble-price' })} ${currency(account, 'trouble')}
      ${said('', account.found.get('trouble'))} ${pictured.draw('visit.trouble.keep')}
    </details>
  `;
}

/** What the form tells. */
export const troubleFact = (account) => () => {
  const value = account.typed('trouble-price');
  const signs = value ? { currency: currencyOf(account) } : {};
  const fact = { kind: 'trouble', text: account.typed('trouble-text'), value, signs };
  return { fact, fields: ['trouble-text', 'trouble-price'] };
};

/** What a trouble would cost. */
export const priceLine = ({ price }) => (price ? amount(price) : t('visit.no-price'));

/** What the customer said of a trouble, when and how. */
export function answerLine({ answer, how, when: told, answered }) {
  if (!answer) return t('visit.not-asked');
  const parts = [t(`visit.answer.${answer}`), how ? t(`visit.how.${how}`) : ''];
  return [...parts, whenText(told ?? answered)].filter(Boolean).join(', ');
}

function trouble(account, one) {
  const open = account.state.unanswered?.includes(one.id);
  return html`<article class="trouble-found" ?data-open=${open}>
    <h3>${verbatim(one.text ?? '')}</h3>
    <p>${priceLine(one)}</p>
    ${one.photo ? photos(account.job, picturesOf(account, [one], 'visit.trouble'), account.app) : nothing}
    <p><strong>${answerLine(one)}</strong></p>
    ${open ? answering(account, one) : nothing}
    <p class="entry">
      ${
        one.answer
          ? html`<button type="button" class="quiet" @click=${() => account.undo(one.answerID)}>
              ${t('visit.answer.take-back')}
            </button>`
          : nothing
      }
      <button type="button" class="quiet" @click=${() => account.undo(one.id)}>
        ${t('visit.take-back')}
      </button>
    </p>
  </article>`;
}

/** Asks for the customer's answer to a trouble. */
function answering(account, { id }) {
  const [field, way, time] = ['answer', 'way', 'when'].map((name) => `${name}-${id}`);
  const { words = [], family = '' } = account.question('answer');
  const lines = words.map((word) => ({ id: word, label: t(family + word) }));
  const pick = (word) => {
    account.drafts.put(field, word);
    account.app.redraw();
  };
  const keep = () =>
    account.tell(
      {
        kind: 'answer',
        what: id,
        value: account.typed(field),
        signs: filled({ how: account.typed(way), when: account.typed(time) }),
      },
      `answering-${id}`,
      { fields: [field, way, time] },
    );
  return html`${namedRadios('visit.ask.answer', lines, account.typed(field), pick, id)}
    ${asked(account, 'way', { field: way })} ${asked(account, 'when', { field: time })}
    ${said('', account.found.get(`answering-${id}`))}
    <button type="button" ?disabled=${!account.typed(field)} @click=${keep}>
      ${t('visit.answer.keep')}
    </button>`;
}

const filled = (signs) => Object.fromEntries(Object.entries(signs).filter(([, value]) => value));
