import { html } from 'lit-html';
import { t } from '../words/catalogue.js';
import { own } from '../site/own.js';

// A shape of its own for each, so that none is known by its colour alone.
const shapes = {
  'carry-on': '○',
  'ride-gently': '△',
  'do-not-ride': '■',
  'do-not-start': '✕',
};

/** What follows from a problem, large: shape, word, and how far. */
export const outcome = ({ outcome: what, to }) =>
  html`<p class="outcome" data-outcome=${what}>
    <strong><b aria-hidden="true">${own(shapes, what)}</b> ${t(`outcome.${what}`)}</strong>
    <span>${t(to ?? `outcome.${what}.so`)}</span>
  </p>`;
