// Whether the page was opened from an icon of its own, and the browser's own way to get
// there, where it offers one.

/**
 * The browser's offer to install the app (Chromium: BeforeInstallPromptEvent).
 *
 * @typedef {Event & { prompt: () => Promise<{ outcome: 'accepted' | 'dismissed' }> }} Offer
 */

/** @type {Offer | null} */
let offer = null;
/** @type {Set<() => void>} */
const watchers = new Set();

globalThis.addEventListener?.('beforeinstallprompt', (event) => {
  event.preventDefault(); // the settings offer it, when the person asks how
  change(/** @type {Offer} */ (event));
});
globalThis.addEventListener?.('appinstalled', () => change(null));

/** @param {Offer | null} now */
function change(now) {
  offer = now;
  for (const changed of watchers) changed();
}

/** Whether the browser offers to install it. */
export const canInstall = () => offer !== null;

/**
 * Calls changed() whenever the browser begins or ceases to offer it; returns a function that ends it.
 *
 * @param {() => void} changed
 */
export function watchInstall(changed) {
  watchers.add(changed);
  return () => void watchers.delete(changed);
}

/** Shows the browser's question, within a tap; resolves to whether the person agreed. An offer holds once. */
export async function install() {
  const asked = offer;
  change(null);
  return (await asked?.prompt().catch(() => null))?.outcome === 'accepted';
}

const windows = ['standalone', 'minimal-ui', 'fullscreen', 'window-controls-overlay'];

/** Whether it was opened from an icon, in a window without the browser's bars. */
export const installed = () =>
  Reflect.get(navigator, 'standalone') === true ||
  windows.some((mode) => matchMedia(`(display-mode: ${mode})`).matches);
