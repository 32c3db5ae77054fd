import { html, nothing } from 'lit-html';
import { unsaved } from './unsaved.js';
import { address } from '../ui/address.js';
import { browserOf, signsOf } from '../phone/browser.js';
import { installed } from '../phone/install.js';
import { byTime } from '../phone/storage-rules.js';
import { anyPersons } from '../store/persons.js';
import { photoRoom } from '../store/photos.js';
import * as store from '../store/store.js';
import { day } from '../words/dates.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { AsideSection } from './aside-section.js';
import { EraseForm } from './erase.js';
import { PersonsForm } from './persons-form.js';
import { RestoreForm } from './restore-form.js';
import { BackupForm } from './backup-form.js';
import { Room } from './room.js';
import { showBike } from './show-bike.js';
import { takeHanded } from '../cards/qr/handed.js';
import { section } from '../ui/section.js';
import { own } from '../site/own.js';

/**
 * Backups, and what they are for: "#/keep"; "#/keep/erase" erases everything, "#/keep/persons"
 * what tells of persons. "#/keep/show/ID" shows a bike as QR codes, "#/keep/codes" goes on with
 * one that was read from them.
 */
export async function keep([view, id, values], app) {
  await loadWordsOf('keep');
  if (view === 'show') return showBike(id, values, app);
  const screen = { name: 'keep', tab: 'settings', title: t('keep.title') };
  if (view === 'persons') {
    const persons = new PersonsForm(app);
    app.attempt(() => persons.load());
    return { ...screen, title: t('persons.title'), draw: () => persons.draw() };
  }
  if (view === 'erase') {
    const erase = new EraseForm(app);
    return { ...screen, draw: () => erase.draw() };
  }
  /** @type {{ jobs: any[], room: Map<string, { count: number, bytes: number }>, backup: any, persons: boolean, unsaved?: number }} */
  const here = { jobs: [], room: new Map(), backup: undefined, persons: false };
  const aside = new AsideSection(app, () => load());
  const load = async () => {
    const read = await app.attempt(() =>
      Promise.all([store.log(), photoRoom(), store.setting('backup'), anyPersons()]),
    );
    await aside.load();
    if (read) {
      [here.jobs, here.room, here.backup, here.persons] = read;
      here.unsaved = (await unsaved(here.jobs)).count;
    }
    app.redraw();
  };
  await load();
  const time = byTime({ installed: installed() }, browserOf(signsOf()));
  const out = new BackupForm(app, load);
  const incoming = new RestoreForm(app, load);
  const handed = takeHanded();
  if (handed) incoming.takeCodes(handed);
  const room = new Room(app, load);
  const all = () => html`
    <h1 tabindex="-1">${t('keep.title')}</h1>
    <p>${t('keep.why')} ${time.map((word) => html`${t(word)} `)}</p>
    <p><strong>${last(here)}</strong></p>
    ${section('keep.out', out.draw(held(here)))} ${section('restore.title', incoming.draw())}
    ${aside.any ? section('aside.title', aside.draw()) : nothing}
    ${section('room.title', room.draw(here.jobs, here.room))}
    ${
      here.persons
        ? section(
            'persons.title',
            html`<p>${t('persons.what')}</p>
              <p>
                <a class="button quiet" href=${address('keep', 'persons')}>${t('persons.open')}</a>
              </p>`,
          )
        : nothing
    }
    ${section(
      'erase.title',
      html`<p>${t('erase.what')}</p>
        <p>
          <a class="button quiet" href=${address('keep', 'erase')}>${t('erase.open')}</a>
        </p>`,
    )}
  `;
  return { ...screen, draw: () => (incoming.open ? incoming.draw() : all()) };
}

/** @param {{ unsaved?: number, backup: any }} here */
function last({ unsaved: count, backup }) {
  const when = backup ? t('keep.last', { date: day(backup.time) }) : t('keep.never');
  const rest = count ? t('keep.unsaved', { count }) : backup ? t('keep.all-saved') : nothing;
  return html`${when} ${rest}`;
}

function held({ jobs, room, persons }) {
  const all = [...room.values()];
  const sum = (name) => all.reduce((total, each) => total + own(each, name), 0);
  return { jobs: jobs.length, photos: sum('count'), bytes: sum('bytes'), persons };
}
