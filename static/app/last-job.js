import * as store from './store.js';

/** The last job on the same bike that was closed before this one began. */
export async function lastOf({ card: { id }, started }) {
  const earlier = (await store.jobs()).filter(
    ({ card, summary }) => card.id === id && summary.finished < started,
  );
  const last = earlier.sort((a, b) => (a.summary.finished < b.summary.finished ? 1 : -1))[0];
  if (!last) return undefined;
  return { card: last.card, bench: last.bench, events: await store.events(last.id) };
}
