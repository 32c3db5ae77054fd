import { html, nothing } from 'lit-html';
import { search } from '../words/search.js';
import { bikesIn, filtered, filterNames, logList } from './log-list.js';
import { address } from '../ui/address.js';
import { day } from '../words/dates.js';
import { t, text } from '../words/catalogue.js';
import { finder, more } from '../ui/lists.js';
import { own } from '../site/own.js';

const many = 6; // from so many jobs on one may want to search
const page = 25; // jobs drawn at once, and at each tap for more
const few = 12; // those drawn while one types: more would make it slow
const mostBikes = 200; // bikes to choose from

/** Draws the log of all jobs, of their lines; what it returns is called to draw it. */
export function log(lines, app) {
  const state = { list: logList(lines, t), bike: '', filter: '', typed: '', shown: page };
  refilter(state);
  return () => draw(state, app);
}

function refilter(state, changes = {}) {
  Object.assign(state, { shown: page }, changes);
  state.among = filtered(state.list, state.bike, state.filter);
  state.fits = search(state.among, state.typed);
}

function draw(state, app) {
  const { list, fits, typed, shown } = state;
  if (!list.length) return html`<p>${t('record.none')}</p>`;
  const change = (changes) => {
    refilter(state, changes);
    app.redraw();
  };
  const type = (text) => {
    // More letters fit fewer: only those that fitted are looked through.
    const among = text.startsWith(state.typed) ? state.fits : state.among;
    Object.assign(state, { typed: text, fits: search(among, text), shown: few });
    app.redraw();
  };
  const further = () => {
    state.shown += page;
    app.redraw();
  };
  return html`
    ${list.length > many ? choices(state, change, type) : nothing}
    ${typed || state.bike || state.filter ? html`<p role="status">${t('bikes.fitting', { count: fits.length })}</p>` : nothing}
    <ul class="jobs">
      ${fits.slice(0, shown).map(line)}
    </ul>
    ${more(fits.length - shown, further)}
  `;
}

function choices({ list, bike, filter, typed }, change, type) {
  const bikes = bikesIn(list);
  return html`
    ${finder(typed, type, 'log.search')}
    <div class="filters">
      ${
        bikes.length > 1
          ? select(
              'log.bike',
              'log.bike.all',
              bike,
              (v) => change({ bike: v }),
              bikes.slice(0, mostBikes).map((b) => [b.bike, `${text(b.name)} (${b.count})`]),
            )
          : nothing
      }
      ${select(
        'log.filter',
        'log.filter.all',
        filter,
        (v) => change({ filter: v }),
        filterNames.map((name) => [name, t(`log.filter.${name}`)]),
      )}
    </div>
  `;
}

const select = (label, none, value, set, options) =>
  html`<label
    >${t(label)}
    <select @change=${({ target }) => set(target.value)}>
      ${[['', t(none)], ...options].map(
        ([id, name]) => html`<option value=${id} ?selected=${id === value}>${name}</option>`,
      )}
    </select></label
  >`;

function line({ id, name, started, summary }) {
  const { home, odometer, oils = [], verdict, notes, photos } = summary;
  const facts = [
    home && t('log.home'),
    odometer && text(odometer),
    ...oils.map(oilText),
    notes && `✎ ${t('record.notes-count', { count: notes })}`,
    photos && t('log.photos', { count: photos }),
  ].filter(Boolean);
  return html`<li>
    <a href=${address('record', id)}>
      <strong>${text(name)}</strong>
      <span>${day(started)} · ${standingOf(summary)}</span>
      ${facts.length ? html`<span>${facts.join(' · ')}</span>` : nothing}
      ${verdict ? html`<span>${t(verdict)}</span>` : nothing}
    </a>
  </li>`;
}

const oilText = ({ poured, grade }) =>
  [poured && text(poured), grade && t('grade.sae', { grade })].filter(Boolean).join(' ');

const shapes = { open: '○', waiting: '◐', closed: '✓' };

/** How far a job has come, by its summary. */
export function standingOf({ phase, done = 0, steps }) {
  const counted = phase === 'open' && steps ? `, ${t('record.steps', { done, count: steps })}` : '';
  return `${own(shapes, phase)} ${t(`record.${phase}`)}${counted}`;
}
