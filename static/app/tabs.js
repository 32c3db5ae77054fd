// Tells the other windows of the app what happened here. What a window missed,
// asleep or without channels, it reads again when it is seen.

const channel = globalThis.BroadcastChannel && new BroadcastChannel('tidysump');
channel?.unref?.(); // only in Node, where it would keep the tests from ending

/** Tells the other windows that a job has changed; without an id, that anything may have. */
export const tell = (job) => channel?.postMessage({ job });

/** Calls see() when that job may have changed elsewhere; returns what ends it. */
export function watchJob(id, see) {
  const told = ({ data }) => (data.job === id || !data.job) && see();
  const shown = () => document.visibilityState === 'visible' && see();
  channel?.addEventListener('message', told);
  document.addEventListener('visibilitychange', shown);
  return () => {
    channel?.removeEventListener('message', told);
    document.removeEventListener('visibilitychange', shown);
  };
}

/** Calls see() when anything may have changed elsewhere. */
export const watchAll = (see) =>
  channel?.addEventListener('message', ({ data }) => data.job || see());
