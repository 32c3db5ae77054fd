import { end } from './database.js';

// Says to the other windows of the app what happened here. What a window missed,
// asleep or without channels, it reads again when it is seen.

const channel = globalThis.BroadcastChannel && new BroadcastChannel('tidysump');
/** @type {any} */ (channel)?.unref?.(); // only in Node, where it would keep the tests from ending

/** @type {Set<(job?: string) => void>} what in this window is told of jobs too */
const watchers = new Set();

/**
 * Says to the other windows, and to what watches the jobs in this one, that a job has
 * changed; without an id, that anything may have.
 *
 * @param {string} [job]
 */
export function announce(job) {
  channel?.postMessage({ job });
  for (const see of watchers) see(job);
}

/**
 * Says to the other windows that facts have changed.
 *
 * @param {string} book
 * @param {string} of their subject
 */
export function announceFacts(book, of) {
  channel?.postMessage({ book, of });
  if (book === 'bike') for (const see of watchers) see(); // their jobs are called as they are
}

/** Says to the other windows that everything was erased. */
export const announceErasing = () => channel?.postMessage({ erased: true });

// What a window remembers of what was erased must not come back.
channel?.addEventListener('message', ({ data }) => {
  if (!data.erased) return;
  end();
  globalThis.location?.reload();
});

/**
 * Calls see() when that job may have changed elsewhere; returns what ends it.
 *
 * @param {string} id
 * @param {() => void} see
 */
export function watchJob(id, see) {
  return watch(({ job, book }) => job === id || (!job && !book), see);
}

/**
 * Calls see(id) when that job may have changed, here or elsewhere, and see() when any may
 * have, or what their bikes are called.
 *
 * @param {(job?: string) => void} see
 */
export function watchJobs(see) {
  watchers.add(see);
  channel?.addEventListener('message', ({ data: { job, book } }) => {
    if (!book || book === 'bike') see(job);
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') see();
  });
}

/**
 * Calls see() when facts of that book, or of that subject in it, may have changed elsewhere;
 * returns what ends it.
 *
 * @param {string} book
 * @param {string | undefined} of
 * @param {() => void} see
 */
export function watchFacts(book, of, see) {
  const meant = (/** @type {any} */ data) => data.book === book && (!of || data.of === of);
  return watch((data) => meant(data) || (!data.job && !data.book), see);
}

/**
 * @param {(data: any) => boolean} meant
 * @param {() => void} see
 */
function watch(meant, see) {
  const heard = (/** @type {MessageEvent} */ { data }) => meant(data) && see();
  const shown = () => document.visibilityState === 'visible' && see();
  channel?.addEventListener('message', heard);
  document.addEventListener('visibilitychange', shown);
  return () => {
    channel?.removeEventListener('message', heard);
    document.removeEventListener('visibilitychange', shown);
  };
}

/**
 * Calls see() when anything may have changed elsewhere.
 *
 * @param {() => void} see
 */
export const watchAll = (see) =>
  channel?.addEventListener('message', ({ data }) => data.job || data.book || see());
