import { html, nothing } from 'lit-html';
import { whenDue, windowOf } from './sentences.js';
import { byBike, outlookOf, remember } from './outlook.js';
import { address } from '../ui/address.js';
import * as store from '../store/store.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { short } from '../ui/lists.js';
import { verdictOf } from './oil.js';
import { notice } from './notice.js';

const most = 100; // bikes looked at: a workshop's of some months

/** "#/due": all bikes of the record, the most urgent first. */
export async function due(_, app) {
  await loadWordsOf('due');
  const [jobs, rows] = (await app.attempt(() => Promise.all([store.log(), store.bikeRows()]))) ?? [
    [],
    [],
  ];
  const bikes = byBike(jobs);
  // Nobody here changes the oil of one that was laid aside.
  for (const { id, aside } of rows) if (aside) bikes.delete(id);
  const state = { rows: [], left: bikes.size, cut: Math.max(bikes.size - most, 0), open: true };
  const reminder = await notice(app);
  askEach([...bikes].slice(0, most), state, app);
  return {
    name: 'due',
    tab: 'record',
    title: t('due.list'),
    close: () => (state.open = false),
    draw: () => html`
      <h1 tabindex="-1">${t('due.list')}</h1>
      ${list(state)} ${state.rows.length ? reminder.draw() : nothing}
    `,
  };
}

/** Asks the core about one bike after the other. */
async function askEach(bikes, state, app) {
  for (const [id, jobs] of bikes) {
    if (!state.open) return;
    const [{ name, id: job }] = jobs; // its record says more
    const outlook = await outlookOf(jobs).catch(() => undefined);
    await remember(id, name, outlook).catch(() => {}); // the list needs no memory
    for (const oil of outlook?.oils ?? []) if (oil.changed) state.rows.push({ name, job, oil });
    state.left -= 1;
    state.rows.sort(urgent);
    app.redraw();
  }
  state.left = 0;
  app.redraw();
}

/** By the core's order: the most urgent first. */
const urgent = ({ oil: a }, { oil: b }) => (a.order < b.order ? -1 : a.order > b.order ? 1 : 0);

function list({ rows, left, cut }) {
  if (!rows.length) return html`<p>${t(left ? 'due.list.working' : 'due.list.none')}</p>`;
  return html`<ul class="jobs">
      ${rows.map(line)}
    </ul>
    ${left ? html`<p>${t('due.list.working')}</p>` : nothing}
    ${cut ? html`<p>${t('due.list.cut', { count: cut })}</p>` : nothing}`;
}

const line = ({ name, job, oil }) =>
  html`<li>
    <a href=${address('record', job)}>
      <strong>${short(name)}</strong>
      <span>${t(oil.role)}</span>
      <span>${verdictOf(oil)}</span>
      <span>${whenDue(oil)}</span>
      <span>${windowOf(oil)}</span>
    </a>
  </li>`;
