import { html, svg } from 'lit-html';
import { encode } from 'uqr';
import { stayAwake } from '../../phone/lock.js';
import { codesOf } from './codes.js';
import { canDeflate } from './deflate.js';
import { address } from '../../ui/address.js';
import { t } from '../../words/catalogue.js';
import { cardText } from '../pack/give-away.js';
import { short } from '../../ui/lists.js';

const turnEvery = 2000; // ms; a camera needs less
const margin = 4; // modules, as the standard asks

/** A card as QR codes, one after the other: "#/cards/show/KEY". */
export async function showCodes(key, app) {
  const made = await app.attempt(() => codes(key), 'cards.failed');
  /** @type {{ at: number, turning?: ReturnType<typeof setInterval> }} */
  const state = { at: 0 };
  const step = (by) => {
    state.at = (state.at + by + made.codes.length) % made.codes.length;
    app.redraw();
  };
  const turn = () => {
    clearInterval(state.turning);
    state.turning = state.turning ? undefined : setInterval(step, turnEvery, 1);
    app.redraw();
  };
  stayAwake(true);
  return {
    name: 'cards',
    tab: 'bikes',
    title: t('qr.show'),
    close: () => (clearInterval(state.turning), stayAwake(false)),
    draw: () => (made?.codes ? draw(made, state, step, turn) : cannot(made)),
  };
}

async function codes(key) {
  const text = await cardText(key);
  const { make, model } = JSON.parse(text);
  return { name: `${make} ${model}`, codes: canDeflate() ? await codesOf(text) : undefined };
}

const cannot = (made) =>
  html`<h1 tabindex="-1">${t('qr.show')}</h1>
    ${made ? html`<p>${t('qr.cannot')}</p>` : ''} ${back()}`;

export const back = () =>
  html`<p><a class="button quiet" href=${address('cards')}>${t('qr.back')}</a></p>`;

/**
 * @param {{ name: string, codes: any[] }} made
 * @param {{ at: number, turning?: unknown }} state
 * @param {(by: number) => void} step
 * @param {() => void} turn
 */
function draw({ name, codes: list }, { at, turning }, step, turn) {
  const several = list.length > 1;
  return html`
    <h1 tabindex="-1">${short(name)}</h1>
    <p>${t('qr.show.how')}</p>
    <figure class="qr">
      ${picture(list.at(at), t('qr.code', { n: at + 1, of: list.length }))}
      <figcaption>${t('qr.code', { n: at + 1, of: list.length })}</figcaption>
    </figure>
    ${
      several
        ? html`<p class="entry">
            <button type="button" @click=${() => step(1)}>${t('qr.next')}</button>
            <button type="button" class="quiet" @click=${() => step(-1)}>
              ${t('qr.previous')}
            </button>
            <button type="button" class="quiet" aria-pressed=${Boolean(turning)} @click=${turn}>
              ${t('qr.turn')}
            </button>
          </p>`
        : ''
    }
    <details>
      <summary>${t('qr.as-text')}</summary>
      <p class="ask">
        <label for="qr-text">${t('qr.as-text.how')}</label>
        <textarea id="qr-text" readonly rows="6" .value=${list.join('\n')}></textarea>
      </p>
    </details>
    ${back()}
  `;
}

/** A code, dark on light in every theme: cameras want it so. */
function picture(text, label) {
  const { data, size } = encode(text, { ecc: 'M', border: margin });
  const rows = data.map((row, y) =>
    row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')).join(''),
  );
  return html`<svg viewBox="0 0 ${size} ${size}" role="img" aria-label=${label}>
    ${svg`<rect width=${size} height=${size} fill="#fff"></rect><path d=${rows.join('')} fill="#000"></path>`}
  </svg>`;
}
