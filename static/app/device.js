// The phone's optional abilities, each with the same answer where it is missing.
import { playFilm, stopFilm } from './film.js';

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
 */
export async function keepAwake(on) {
  wanted = on;
  if (!on) return letGo();
  return lock && !lock.released ? 'lock' : hold();
}

/** Asks the phone to keep the records; resolves to its answer. */
export async function keepRecords() {
  return (await navigator.storage?.persist?.().catch(() => false)) ?? false;
}

/** Whether the phone has promised to keep the records. */
export async function recordsKept() {
  return (await navigator.storage?.persisted?.().catch(() => false)) ?? false;
}

/** What the browser believes the app takes and may take, {usage, quota} in bytes; {} when it won't say. */
export async function roomLeft() {
  return (await navigator.storage?.estimate?.().catch(() => {})) ?? {};
}

/** Pixels of the screen per CSS pixel, and the pinch zoom: what scales the page. */
export const zoom = () => ({
  ratio: devicePixelRatio,
  pinch: globalThis.visualViewport?.scale ?? 1,
});

/** Calls tell() whenever the page is zoomed, by keys, by fingers, or onto another screen. */
export function onZoom(tell) {
  for (const window of [globalThis, globalThis.visualViewport]) {
    window?.addEventListener('resize', tell);
  }
  const again = () => {
    matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener('change', again, {
      once: true,
    });
    tell();
  };
  again();
}
