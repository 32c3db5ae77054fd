import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { today } from '../words/dates.js';
import { askToNotify, canNotify, mayNotify, notify } from '../phone/notice.js';
import * as store from '../store/store.js';
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

/** Notifies of what is due, where that was asked for; how often is up to the core. */
export async function notifyDue(now = Date.now()) {
  const wanted = await store.setting('notice');
  if (!wanted || !mayNotify()) return;
  const bikes = (await store.setting('due')) ?? [];
  const { ok } = await call('due-notice', {
    bikes: bikes.map(({ name, remind }) => ({ name, remind })),
    today: today(),
    notified: new Date(wanted.told).toISOString(),
    now: new Date(now).toISOString(),
  });
  if (!ok?.bike) return;
  await loadWordsOf('due');
  await notify(t('due.notice.text', { bike: ok.bike }), 'due');
  await store.saveSetting('notice', { told: now });
}
