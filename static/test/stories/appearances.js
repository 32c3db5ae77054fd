// How a person may have the page look, and on what.
import { textSize } from '../browser/layout.js';

/** Name -> what the browser is told: the colour scheme, forced colours, the size of text. */
export const appearances = {
  light: { scheme: 'light' },
  dark: { scheme: 'dark' },
  large: { scheme: 'light', text: 2 },
  forced: { scheme: 'dark', forced: true },
};

/** Name -> the size of the screen. */
export const sizes = {
  phone: { width: 360, height: 740 },
  desk: { width: 1280, height: 900 },
};

const sessions = new WeakMap();

/** Gives a page that appearance. */
export async function appear(page, name) {
  const { scheme, forced, text = 1 } = appearances[name];
  if (!sessions.has(page)) sessions.set(page, await page.createCDPSession());
  await sessions.get(page).send('Emulation.setEmulatedMedia', {
    features: [
      { name: 'prefers-color-scheme', value: scheme },
      { name: 'forced-colors', value: forced ? 'active' : 'none' },
    ],
  });
  await textSize(page, text);
}
