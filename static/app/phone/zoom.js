/** Pixels of the screen per CSS pixel, and the pinch zoom: what scales the page. */
export const zoom = () => ({
  ratio: devicePixelRatio,
  pinch: globalThis.visualViewport?.scale ?? 1,
});

/**
 * Calls changed() whenever the page is zoomed, by keys, by fingers, or onto another screen.
 *
 * @param {() => void} changed
 */
export function onZoom(changed) {
  for (const window of [globalThis, globalThis.visualViewport]) {
    window?.addEventListener('resize', changed);
  }
  const again = () => {
    matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener('change', again, {
      once: true,
    });
    changed();
  };
  again();
}
