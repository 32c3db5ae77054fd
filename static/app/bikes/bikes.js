import { html, nothing } from 'lit-html';
import { bikeList } from './bike-list.js';
import { search } from '../words/search.js';
import { file } from '../site/data.js';
import { address, go } from '../ui/address.js';
import { offline } from '../phone/offline.js';
import { settings, settled } from '../store/settings.js';
import * as store from '../store/store.js';
import { t } from '../words/catalogue.js';
import { bikeFacts, place } from './bike-line.js';
import { finder, more } from '../ui/lists.js';

const page = 25; // bikes drawn at once, and at each tap for more
const few = 12; // those drawn while one types: more would make it slow

/** The first screen: the open jobs, then the bikes. To be seen it needs no core. */
export async function bikes(_, app) {
  const { bikes: samples = [] } = await file('bikes.json');
  /** @type {any} */
  const state = { open: [], list: bikeList([], samples, [], t), typed: '', shown: page, due: [] };
  // The samples don't wait for the store.
  app.attempt(async () => {
    const kept = [store.log(), store.lines(), store.setting('due'), store.bikeRows(), settled()];
    const [jobs, lines, due, rows] = await Promise.all(kept);
    state.due = due ?? [];
    state.open = jobs.filter(({ summary }) => summary.phase !== 'closed');
    state.list = bikeList(lines, samples, jobs, t);
    if (rows.length || settings.forOthers) {
      const { Told } = await app.later();
      state.told = await Told.open(rows, state.list, jobs, app);
      state.list = state.told.list;
    }
    state.fits = undefined;
    look(state, state.typed);
    state.later?.turn();
    app.redraw();
  });
  // Signs, what else may be meant by what is typed, filters, timers: a moment later.
  app.later().then(
    ({ Later }) => {
      state.later = new Later(state, app);
      app.redraw();
    },
    () => {}, // the list is there without them
  );
  return {
    name: 'bikes',
    tab: 'bikes',
    title: t('bikes.title'),
    draw: () => draw(state, app),
    close: () => state.later?.close(),
  };
}

function draw(state, app) {
  const { later, typed } = state;
  return html`
    <header class="brand">
      <h1 tabindex="-1">${t('bikes.title')}</h1>
      <p>${offline.state.ready ? t('app.offline') : nothing}</p>
    </header>
    ${typed ? nothing : later?.jobs()}
    <div class="find">
      ${finder(typed, (now) => found(state, now, app), 'bikes.search', {
        hint: t('bikes.search.hint'),
        enter: () => enter(state),
      })}
      ${later?.button()}
      <a class="button quiet" href=${address('edit')}>+ ${t('bikes.new')}</a>
      ${later?.paste()}
    </div>
    ${later?.between()} ${listed(state, app)} ${later?.foot()}
    <p class="tagline">${t('app.name')}: ${t('app.tagline')}</p>
    <div class="actions wrong"><a class="button" href="#/trouble">${t('bikes.roadside')}</a></div>
  `;
}

/** What fits, letter by letter; how else it may be meant is said a moment later. */
function look(state, typed) {
  // More letters fit fewer: only those that fitted are looked through.
  const among = typed && typed.startsWith(state.typed) ? state.fits : undefined;
  const fits = search(among ?? state.list, typed);
  Object.assign(state, { typed, fits });
}

function found(state, typed, app) {
  look(state, typed);
  state.shown = few;
  state.later?.ask(typed);
  app.redraw();
}

/** The only one that is meant opens. */
async function enter(state) {
  const meant = (await state.later?.meant()) ?? state.fits ?? [];
  if (meant.length === 1) go('bike', ...at(meant[0]));
}

const at = (row) => row.at ?? [row.key];

function listed(state, app) {
  const { later, told, typed } = state;
  const fits = later?.fits ?? state.fits ?? state.list;
  const rows = told ? told.shown(fits, typed, later?.chosen) : fits;
  const shown = rows.slice(0, state.shown);
  const further = () => {
    state.shown += page;
    app.redraw();
  };
  const part = (word, list) =>
    list.length
      ? html`${word ? html`<h2 class="bikes-part">${t(word)}</h2>` : nothing}
          <ul class="bikes">
            ${list.map((row) => item(row, state))}
          </ul>`
      : nothing;
  return html`
    ${later?.said(fits.length)}
    ${part(
      '',
      shown.filter((row) => row.mine),
    )}
    ${told?.aside(fits, rows)}
    ${part(
      told?.from,
      shown.filter((row) => row.own && !row.mine),
    )}
    ${part(
      'examples',
      shown.filter((row) => !row.own && !row.mine),
    )}
    ${more(rows.length - state.shown, further)}
  `;
}

function item(row, state) {
  const { own: pins, told } = row;
  const sign = state.later?.sign(row) ?? place;
  const due = state.later?.due(row);
  const line = html`<a href=${address('bike', ...at(row))}
    >${told ? state.told.facts(row, { sign, due }) : bikeFacts(row, { sign, due, own: state.later?.own(row), example: row.mine })}</a
  >`;
  return pins
    ? html`<li class="own">${line} ${state.later?.star(row)}</li>`
    : html`<li>${line}</li>`;
}
