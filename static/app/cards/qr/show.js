import { html } from 'lit-html';
import { codesOf } from './codes.js';
import { canDeflate } from './deflate.js';
import { ShownCodes } from './shown-codes.js';
import { address } from '../../ui/address.js';
import { t } from '../../words/catalogue.js';
import { cardText } from '../pack/give-away.js';
import { short } from '../../ui/lists.js';

/** A card as QR codes, one after the other: "#/cards/show/KEY". */
export async function showCodes(key, app) {
  const made = await app.attempt(() => codes(key));
  const shown = made?.codes && new ShownCodes(made.codes, app);
  return {
    name: 'cards',
    tab: 'bikes',
    pictured: true,
    title: t('qr.show'),
    close: () => shown?.close(),
    draw: () =>
      shown
        ? html`<h1 tabindex="-1">${short(made.name)}</h1>
            <p>${t('qr.show.how')}</p>
            ${shown.draw()} ${back()}`
        : cannot(made),
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
