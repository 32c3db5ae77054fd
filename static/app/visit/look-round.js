import { html, nothing } from 'lit-html';
import { photos } from '../photos/photos.js';
import { said } from '../ui/said.js';
import { t, verbatim } from '../words/catalogue.js';
import { asked } from './asked.js';

/** What was found on arrival, and a form for more of it. */
export function lookRound(account, pictured) {
  const { found = [] } = account.state;
  return html`
    ${
      found.length
        ? html`<ul class="items">
            ${found.map((one) => html`<li>${seen(account, one)}</li>`)}
          </ul>`
        : nothing
    }
    <details class="more" ?open=${Boolean(account.typed('found-text')) || pictured.waiting}>
      <summary>${t('visit.found.add')}</summary>
      ${asked(account, 'found', { field: 'found-what' })}
      ${asked(account, 'text', { field: 'found-text', word: 'visit.ask.found.text' })}
      ${said('', account.found.get('found'))} ${pictured.draw('visit.found.keep')}
    </details>
  `;
}

/** What the form tells. */
export const foundFact = (account) => () => ({
  fact: {
    kind: 'found',
    what: account.typed('found-what') || account.question('found').words.at(-1),
    text: account.typed('found-text'),
  },
  fields: ['found-what', 'found-text'],
});

/** A thing of the look round as a line: what it is, in whose words. */
export const seenLine = ({ what, text: written = '' }) =>
  [t(`visit.found.${what}`), written ? verbatim(written) : ''].filter(Boolean).join(': ');

const seen = (account, one) => html`
  <p>${seenLine(one)}</p>
  ${one.photo ? photos(account.job, picturesOf(account, [one], `visit.found.${one.what}`), account.app) : nothing}
  <button type="button" class="quiet" @click=${() => account.undo(one.id)}>
    ${t('visit.take-back')}
  </button>
`;

const kept = new WeakMap();

/**
 * The pictures of facts, as the shelf of photos takes them: the same ones at each drawing,
 * since it knows by them which is enlarged.
 */
export function picturesOf(account, list, word) {
  if (!kept.has(account)) kept.set(account, new Map());
  const known = kept.get(account);
  return list.map(({ id, time }) => {
    if (!known.has(id)) known.set(id, { id, time, what: 'other', word });
    return known.get(id);
  });
}
