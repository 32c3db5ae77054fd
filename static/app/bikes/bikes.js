import { html, nothing } from 'lit-html';
import { bikeList } from './bike-list.js';
import { search } from '../words/search.js';
import { file } from '../site/data.js';
import { address } from '../ui/address.js';
import { offline } from '../phone/offline.js';
import { settings, settled } from '../store/settings.js';
import * as store from '../store/store.js';
import { t, text } from '../words/catalogue.js';
import { today } from '../words/dates.js';
import { bikeLine } from './bike-line.js';
import { finder, more } from '../ui/lists.js';
import { own } from '../site/own.js';

const many = 6; // from so many bikes on one may want to search
const page = 25; // bikes drawn at once, and at each tap for more
const mostOpen = 3; // open jobs that stand before the bikes
const few = 12; // those drawn while one types: more would make it slow

/** The first screen: the open jobs, then the bikes. It needs no core. */
export async function bikes(_, app) {
  const { bikes: samples = [] } = await file('bikes.json');
  /** @type {any} */
  const state = { open: [], list: bikeList([], samples, [], t), typed: '', shown: page };
  // The samples don't wait for the store.
  app.attempt(async () => {
    const kept = [store.log(), store.lines(), store.setting('due'), store.bikeRows(), settled()];
    const [jobs, lines, due, rows] = await Promise.all(kept);
    state.due = due?.find(({ remind }) => remind <= today());
    state.open = jobs.filter(({ summary }) => summary.phase !== 'closed');
    const list = bikeList(lines, samples, jobs, t);
    if (rows.length || settings.forOthers) {
      const { Told } = await app.later();
      state.told = await Told.open(rows, list, jobs, app);
      state.told.find(state.typed);
    }
    state.list = state.told?.cards ?? list;
    state.fits = search(state.list, state.typed);
    app.redraw();
  });
  return {
    name: 'bikes',
    tab: 'bikes',
    title: t('nav.bikes'),
    draw: () => draw(state, app),
  };
}

function draw(state, app) {
  const { open, list, told } = state;
  return html`
    <header class="brand">
      <p class="name">${t('app.name')}</p>
      <p class="tagline">${t('app.tagline')} ${offline.state.ready ? t('app.offline') : nothing}</p>
    </header>
    ${open.length ? openJobs(open) : nothing}
    ${
      state.due
        ? html`<p>
            <a class="button quiet" href=${address('due')}>● ${t('bikes.due', state.due)}</a>
          </p>`
        : nothing
    }
    <p><a class="button quiet" href="#/trouble">${t('bikes.roadside')}</a></p>
    <h1 tabindex="-1">${t('bikes.title')}</h1>
    ${list.length > many || told ? finder(state.typed, (typed) => found(state, typed, app), told?.word) : nothing}
    ${told?.draw((state.fits ?? list).length, (row) => item(row, app))}
    <p><a class="button quiet" href=${address('edit')}>${t('bikes.new')}</a></p>
    ${list.length ? listed(state, app) : html`<p>${t('bikes.none')}</p>`}
    <p><a class="button quiet" href=${address('cards')}>${t('bikes.cards')}</a></p>
  `;
}

function found(state, typed, app) {
  // More letters fit fewer: only those that fitted are looked through.
  const among = typed.startsWith(state.typed) ? state.fits : undefined;
  const fits = search(among ?? state.list, typed);
  Object.assign(state, { typed, fits, shown: few });
  state.told?.find(typed);
  app.redraw();
}

function listed(state, app) {
  const fits = state.fits ?? state.list;
  const further = () => {
    state.shown += page;
    app.redraw();
  };
  return html`
    ${state.typed && !state.told ? html`<p role="status">${t('bikes.fitting', { count: fits.length })}</p>` : nothing}
    <ul class="bikes">
      ${fits.slice(0, state.shown).map((row) => item(row, app))}
    </ul>
    ${more(fits.length - state.shown, further)}
  `;
}

function item(row, app) {
  const { key, bike, own, pinned, at = [key] } = row;
  const line = bikeLine(row, address('bike', ...at));
  if (!own) return html`<li>${line}</li>`;
  return html`<li class="own">
    ${line}
    <button
      type="button"
      class="quiet"
      aria-pressed=${pinned}
      aria-label=${t('bikes.pin', { name: bike.name })}
      @click=${() => pin(row, app)}
    >
      ${pinned ? '★' : '☆'}
    </button>
  </li>`;
}

/** The row stays where it is until the list is opened anew: nothing jumps under a finger. */
async function pin(row, app) {
  const pinned = !row.pinned;
  const kept = await app.attempt(async () => {
    const record = await store.card(row.key);
    if (record) await store.putCard({ ...record, pinned });
    return true;
  });
  if (!kept) return;
  row.pinned = pinned;
  app.say(t(pinned ? 'bikes.pinned' : 'bikes.unpinned', { name: row.bike.name }));
}

// What is to be done about a job, by how far it has come. A bike that is not to be
// ridden is not looked at after a ride.
const words = { open: 'bikes.resume', waiting: 'bikes.look-again' };
const nextOf = ({ phase, stop }) =>
  stop && phase === 'waiting' ? 'bikes.stopped' : (own(words, phase) ?? '');

function openJobs(open) {
  return html`<section class="open-jobs" aria-label=${t('bikes.open-jobs')}>
    ${open.slice(0, mostOpen).map(
      ({ id, name, summary }) =>
        html`<a class="resume" href=${address('job', id)}>
          <strong>${t(nextOf(summary))}: ${text(name)}</strong>
          ${
            summary.steps
              ? html`<span
                  >${t('bikes.progress', { done: summary.done ?? 0, count: summary.steps })}</span
                >`
              : nothing
          }
        </a>`,
    )}
    ${
      open.length > mostOpen
        ? html`<p>
            <a class="button quiet" href=${address('record')}
              >${t('bikes.more-jobs', { count: open.length - mostOpen })}</a
            >
          </p>`
        : nothing
    }
  </section>`;
}
