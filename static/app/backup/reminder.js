import { html, nothing } from 'lit-html';
import { unsaved } from './unsaved.js';
import { address } from '../ui/address.js';
import * as store from '../store/store.js';
import { t } from '../words/catalogue.js';

/** Reminds, on the list of jobs, when much is in no backup; resolves to what draws it. */
export async function reminder(lines, app) {
  const { count, remind } = await unsaved(lines);
  let open = remind;
  const putOff = async () => {
    open = false;
    await app.attempt(() => store.saveSetting('backupLater', { time: new Date().toISOString() }));
    app.redraw();
  };
  return () =>
    open
      ? html`<section class="message" aria-label=${t('remind.title')}>
          <p>${t('keep.unsaved', { count })}</p>
          <div class="entry">
            <a class="button" href=${address('keep')}>${t('remind.go')}</a>
            <button type="button" class="quiet" @click=${putOff}>${t('remind.later')}</button>
          </div>
        </section>`
      : nothing;
}
