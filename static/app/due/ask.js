import { html } from 'lit-html';
import { saveSetting } from '../store/store.js';
import { logOf } from '../store/of-bike.js';
import { t } from '../words/catalogue.js';
import { today } from '../words/dates.js';
import { Odometer } from './odometer.js';
import { outlookOf, remember } from './outlook.js';

/**
 * Asks on the first screen what the odometer of a bike shows, until it is written down or
 * put off.
 *
 * @param {{ id: string, name: string }} bike
 * @param {any} app
 */
export async function askOdometer({ id, name }, app) {
  const away = async () => {
    app.asks = undefined;
    app.redraw();
    await app.attempt(() => saveSetting('askedOdometer', today()));
  };
  const outlook = async () => outlookOf(await logOf(id), undefined, id);
  const odometer = await Odometer.open(id, app, async () => {
    const now = await outlook();
    await remember(id, name, now);
    // What is less than before is looked at first.
    if (!now?.findings?.some(({ where }) => where === '/last')) await away();
    else known = now;
    return now;
  });
  let known = await outlook();
  app.asks = () =>
    html`<section class="message" aria-label=${t('odometer.title')}>
      <p><strong>${t('odometer.asked', { bike: name })}</strong> ${t('odometer.asked.why')}</p>
      ${odometer.draw(known)}
      <button type="button" class="quiet" @click=${away}>${t('odometer.asked.later')}</button>
    </section>`;
  app.redraw();
}
