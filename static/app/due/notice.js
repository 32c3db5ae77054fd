import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { today } from '../words/dates.js';
import { askToNotify, canNotify, mayNotify, notify } from '../phone/notice.js';
import { settings } from '../store/settings.js';
import * as store from '../store/store.js';
import { askOdometer } from './ask.js';
import { loadWordsOf, t } from '../words/catalogue.js';

/** The button that asks for notices; the browser is asked by a tap only. */
export async function notice(app) {
  let on = Boolean(await store.setting('notice').catch(() => false));
  const change = (wanted) => async () => {
    if (wanted && !(await askToNotify())) {
      app.say(t('due.notice.denied'));
      return;
    }
    const kept = await app.attempt(() =>
      store.saveSetting('notice', wanted ? { told: 0 } : false).then(() => true),
    );
    if (kept) on = wanted;
    app.redraw();
  };
  const draw = () =>
    canNotify()
      ? html`<p>${t('due.notice.on')}</p>
          <p class="entry">
            <button type="button" class="quiet" @click=${change(!on)}>
              ${t(on ? 'due.notice.off' : 'due.notice')}
            </button>
          </p>`
      : nothing;
  return { draw };
}

/**
 * What is to be done when the app is opened: notifies of what is due, where that was asked
 * for, and asks what an odometer shows that nobody has read for long. How often is up to the
 * core.
 */
export async function atOpening(app, now = Date.now()) {
  const [wanted, bikes = [], asked] = await Promise.all(
    ['notice', 'due', 'askedOdometer'].map(store.setting),
  );
  if (!bikes.length) return;
  const may = wanted && mayNotify();
  const { ok } = await call('due-notice', {
    bikes,
    today: today(),
    notified: new Date(may ? wanted.told : now).toISOString(),
    ...(asked && { asked }),
    now: new Date(now).toISOString(),
  });
  // Who works for others has nobody's odometer at hand.
  const bike = bikes.find(({ id }) => id === ok?.ask);
  if (bike && !settings.forOthers) await askOdometer(bike, app);
  if (may && ok?.bike) await notifyOf(ok.bike, now);
}

async function notifyOf(bike, now) {
  await loadWordsOf('due');
  await notify(t('due.notice.text', { bike }), 'due');
  await store.saveSetting('notice', { told: now });
}
