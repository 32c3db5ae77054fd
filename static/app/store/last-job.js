import * as store from './store.js';

/** The last job on the same bike that was closed before this one began. */
export async function lastOf({ card: { id }, started }) {
  const earlier = (await store.logOf(id)).filter(({ summary }) => summary.finished < started);
  const last = earlier.sort((a, b) => (a.summary.finished < b.summary.finished ? 1 : -1))[0];
  if (!last) return undefined;
  const { card, bench } = await store.job(last.id);
  return { card, bench, events: await store.events(last.id) };
}
