import { html, nothing } from 'lit-html';
import { file } from '../site/data.js';
import { set, settings, wereRead } from '../store/settings.js';
import { t } from '../words/catalogue.js';

/** The changes since the version that this person saw last; shown once, after an update. */
function changes(app) {
  const { changelog } = app;
  if (!changelog || settings.seenChange === undefined) return nothing;
  const at = changelog.findIndex((entry) => entry.version === settings.seenChange);
  const news = at < 0 ? changelog : changelog.slice(0, at);
  if (news.length === 0) return nothing;
  const close = async () => {
    await set('seenChange', changelog[0].version);
    app.redraw();
  };
  return html`<section class="message" aria-label=${t('changed.title')}>
    <h2>${t('changed.title')}</h2>
    ${changeList(news)}
    <button type="button" class="quiet" @click=${close}>${t('close')}</button>
  </section>`;
}

/** Entries of the changelog, program and data apart. */
export const changeList = (entries) =>
  html`<ul>
    ${entries.flatMap(({ program, data }) => [...program, ...data]).map((id) => html`<li>${t(id)}</li>`)}
  </ul>`;

/**
 * Reads what has changed and says what of it is new; a person who comes for the first time
 * has nothing to catch up with.
 */
export async function tellChanges(app) {
  await wereRead();
  app.changelog = await file('changelog.json');
  if (settings.seenChange === undefined) await set('seenChange', app.changelog[0].version);
  app.news = changes;
  app.redraw();
}
