import { html, nothing } from 'lit-html';
import { unsaved } from '../keep/remind.js';
import { address } from '../router.js';
import { photoRoom } from '../store-photos.js';
import * as store from '../store.js';
import { day, loadWordsOf, t } from '../words.js';
import { KeepErase } from './keep-erase.js';
import { KeepIn } from './keep-in.js';
import { KeepOut } from './keep-out.js';
import { KeepRoom } from './keep-room.js';
import { part } from './part.js';

/** Backups, and what they are for: "#/keep"; "#/keep/erase" erases everything. */
export async function keep([view], app) {
  await loadWordsOf('keep');
  const screen = { name: 'keep', tab: 'settings', title: t('keep.title') };
  if (view === 'erase') {
    const erase = new KeepErase(app);
    return { ...screen, draw: () => erase.draw() };
  }
  let here = { jobs: [], room: new Map() };
  const load = async () => {
    const read = await app.keep(() =>
      Promise.all([store.log(), photoRoom(), store.setting('backup')]),
    );
    if (read) {
      [here.jobs, here.room, here.backup] = read;
      here.unsaved = (await unsaved(here.jobs).catch(() => ({}))).count;
    }
    app.redraw();
  };
  await load();
  const out = new KeepOut(app, load);
  const incoming = new KeepIn(app, load);
  const room = new KeepRoom(app, load);
  const all = () => html`
    <h1 tabindex="-1">${t('keep.title')}</h1>
    <p>${t('keep.why')}</p>
    <p><strong>${last(here)}</strong></p>
    ${part('keep.out', out.draw(held(here)))} ${part('restore.title', incoming.draw())}
    ${part('room.title', room.draw(here.jobs, here.room))}
    ${part(
      'erase.title',
      html`<p>${t('erase.what')}</p>
        <p>
          <a class="button quiet" href=${address('keep', 'erase')}>${t('erase.open')}</a>
        </p>`,
    )}
  `;
  return { ...screen, draw: () => (incoming.open ? incoming.draw() : all()) };
}

function last({ unsaved: count, backup }) {
  const when = backup ? t('keep.last', { date: day(backup.time) }) : t('keep.never');
  const rest = count ? t('keep.unsaved', { count }) : backup ? t('keep.all-saved') : nothing;
  return html`${when} ${rest}`;
}

function held({ jobs, room }) {
  const all = [...room.values()];
  const sum = (name) => all.reduce((total, each) => total + each[name], 0);
  return { jobs: jobs.length, photos: sum('count'), bytes: sum('bytes') };
}
