import { html, nothing } from 'lit-html';
import { settings } from '../store/settings.js';
import { watchFacts } from '../store/windows.js';
import { address } from '../ui/address.js';
import { loadWordsOf, t, verbatim } from '../words/catalogue.js';
import { visitOf } from './state.js';

/**
 * The visit of a job, on the screen of the job: a link, and what the customer has to
 * decide before more is done. Who works for nobody else has none.
 */
export function visitBeside(job, app) {
  if (!settings.forOthers) return { draw: () => nothing, close: () => {} };
  let state;
  const load = () =>
    app
      .attempt(async () => {
        await loadWordsOf('visit');
        state = (await visitOf(job)) ?? {};
      })
      .then(() => app.redraw());
  load();
  const close = watchFacts('visit', job.record.id, load);
  return { draw: () => (state ? strip(job, state) : nothing), close };
}

/** Where the record of a job leads to what was for the customer. */
export const visitLinks = (id) =>
  html`<p class="entry">
    <a class="button quiet" href=${address('visit', id)}>${t('visit.title')}</a>
    <a class="button quiet" href=${address('label', id)}>${t('label.title')}</a>
  </p>`;

function strip({ record }, { troubles = [], unanswered = [] }) {
  const open = troubles.filter(({ id }) => unanswered.includes(id));
  const link = html`<a href=${address('visit', record.id)}>${t('visit.title')}</a>`;
  if (!open.length) return html`<p class="kept">${link}</p>`;
  return html`<div class="message">
    <p><strong>${t('visit.ask-first', { count: open.length })}</strong></p>
    <ul>
      ${open.map(({ text: written = '' }) => html`<li>${verbatim(written)}</li>`)}
    </ul>
    <p>${link}</p>
  </div>`;
}
