// The phone's optional abilities, each with the same answer where it is missing.
import { playFilm, stopFilm } from './film.js';

/** @type {WakeLockSentinel | null} */
let lock = null;
let wanted = false;

async function hold() {
  try {
    lock = await navigator.wakeLock.request('screen');
  } catch {
    lock = null; // low battery, hidden page, or a browser without it
  }
  if (!wanted) return letGo(); // let go in the meantime
  if (lock) stopFilm();
  else return (await playFilm()) ? 'film' : '';
  return 'lock';
}

function letGo() {
  lock?.release().catch(() => {});
  lock = null;
  stopFilm();
  return '';
}

document.addEventListener('visibilitychange', () => {
  if (wanted && document.visibilityState === 'visible') hold();
});

/**
 * Keeps the screen on, or lets it go. Resolves to what keeps it on: 'lock', what
 * browsers have for it; 'film', which many heed; or ''.
 *
 * @param {boolean} on
 */
export async function stayAwake(on) {
  wanted = on;
  if (!on) return letGo();
  return lock && !lock.released ? 'lock' : hold();
}
