import { html } from 'lit-html';
import * as store from '../store/store.js';
import { t } from '../words/catalogue.js';

/** The button that has a card of one's own come first. */
export const star = (row, app) =>
  html`<button
    type="button"
    class="quiet"
    aria-pressed=${row.pinned}
    aria-label=${t('bikes.pin', { name: row.bike.name })}
    @click=${() => pin(row, app)}
  >
    ${row.pinned ? '★' : '☆'}
  </button>`;

/** The row stays where it is until the list is opened anew: nothing jumps under a finger. */
async function pin(row, app) {
  const pinned = !row.pinned;
  const kept = await app.attempt(async () => {
    const record = await store.card(row.key);
    if (record) await store.putCard({ ...record, pinned });
    return true;
  });
  if (!kept) return;
  row.pinned = pinned;
  app.say(t(pinned ? 'bikes.pinned' : 'bikes.unpinned', { name: row.bike.name }));
}
