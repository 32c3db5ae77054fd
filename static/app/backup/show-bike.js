import { html, nothing } from 'lit-html';
import { canDeflate } from '../cards/qr/deflate.js';
import { ShownCodes } from '../cards/qr/shown-codes.js';
import { limits, loadLimits } from '../core/limits.js';
import { bikeAt } from '../store/bike-at.js';
import { bikeName } from '../store/bike-name.js';
import { address } from '../ui/address.js';
import { addressWith, withAddress } from '../ui/address-with.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { bikeCodes } from './bike-codes.js';

/** The address of a bike as QR codes. */
export const codesAt = (/** @type {string} */ id, /** @type {boolean} */ persons) =>
  addressWith(['keep', 'show', id], { persons: persons ? 'yes' : '' });

/** A bike with its record as QR codes: "#/keep/show/ID?persons=yes". */
export async function showBike(id, values, app) {
  const persons = withAddress(values).get('persons')?.[0] === 'yes';
  await Promise.all([loadWordsOf('cards'), loadLimits()]);
  const made = await app.attempt(() => madeOf(id, persons), 'give.failed');
  const shown = made?.codes && new ShownCodes(made.codes, app);
  return {
    name: 'keep',
    tab: 'bikes',
    pictured: true,
    title: t('qr.show'),
    close: () => shown?.close(),
    draw: () => html`
      <h1 tabindex="-1">${made ? text(made.name) : t('qr.show')}</h1>
      ${
        shown
          ? html`<p>${t('qr.show.how')}</p>
              <p>${t(persons ? 'give.codes.with' : 'give.codes.without')}</p>
              ${shown.draw()}`
          : nothing
      }
      ${made?.why ? html`<p>${t(made.why)}</p>` : nothing}
      <p><a class="button quiet" href=${address('details', id)}>${t('give.back')}</a></p>
    `,
  };
}

/** The name of the bike, and its codes or why there are none, as a word id. */
async function madeOf(id, persons) {
  const { late, ...soon } = await bikeAt(id);
  const { row, card } = (await late) ?? soon;
  // Without persons no picture of this screen shows a plate either.
  const told = row && (persons ? row : { ...row, plate: '' });
  const name = bikeName(told, card ? `${card.make} ${card.model}` : id);
  if (!card && !row) return { name: t('bikes.unknown') };
  if (!canDeflate()) return { name, why: 'give.codes.cannot' };
  if (!globalThis.crypto?.subtle) return { name, why: 'keep.insecure' };
  const codes = await bikeCodes(id, persons, limits.call ?? 0);
  return codes ? { name, codes } : { name, why: 'give.codes.large' };
}
