import { svg, html } from 'lit-html';
import { own } from '../site/own.js';

// Signs that not every phone's letters have, on a field of 24 by 24.
const paths = {
  bell: svg`<path d="M12 2a7 7 0 0 0-7 7v5l-2 4h18l-2-4V9a7 7 0 0 0-7-7zM9 20a3 3 0 0 0 6 0z" />`,
  microphone: svg`<path d="M12 2a3.5 3.5 0 0 0-3.5 3.5v6a3.5 3.5 0 0 0 7 0v-6A3.5 3.5 0 0 0 12 2zM5 11h2a5 5 0 0 0 10 0h2a7 7 0 0 1-6 6.9V22h-2v-4.1A7 7 0 0 1 5 11z" />`,
  speaker: svg`<path d="M3 9v6h4l6 5V4L7 9zM16 7.5v9a5 5 0 0 0 0-9z" />`,
};

/**
 * A sign beside a word that says the same.
 *
 * @param {keyof typeof paths} name
 */
export const icon = (name) =>
  html`<svg class="icon" viewBox="0 0 24 24" aria-hidden="true">${own(paths, name)}</svg>`;
