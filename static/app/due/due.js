import { html, nothing } from 'lit-html';
import { byBike, outlookOf, remember } from './outlook.js';
import { address } from '../ui/address.js';
import * as store from '../store/store.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { short } from '../ui/lists.js';
import { Odometer } from './odometer.js';
import { dueLine, dueOil } from './oil.js';
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
    const row = { id, name, job, outlook: await outlookOf(jobs).catch(() => undefined) };
    await remember(id, name, row.outlook).catch(() => {}); // the list needs no memory
    if (oilsOf(row).length) {
      row.odometer = await Odometer.open(id, app, async () => {
        row.outlook = await outlookOf(jobs);
        await remember(id, name, row.outlook);
        return row.outlook;
      });
      state.rows.push(row);
    }
    state.left -= 1;
    state.rows.sort((a, b) => (orderOf(a) < orderOf(b) ? -1 : 1)); // the core's: the most urgent first
    app.redraw();
  }
  state.left = 0;
  app.redraw();
}

const oilsOf = ({ outlook }) => (outlook?.oils ?? []).filter(({ changed }) => changed);
const orderOf = (row) =>
  oilsOf(row)
    .map(({ order }) => order)
    .sort()[0] ?? '';

function list({ rows, left, cut }) {
  if (!rows.length) return html`<p>${t(left ? 'due.list.working' : 'due.list.none')}</p>`;
  return html`<ul class="due-list">
      ${rows.map((row, n) => line(row, n === 0))}
    </ul>
    ${left ? html`<p>${t('due.list.working')}</p>` : nothing}
    ${cut ? html`<p>${t('due.list.cut', { count: cut })}</p>` : nothing}`;
}

/** A bike in one line that opens: its oils, and what its odometer shows; the most urgent is open. */
function line({ name, job, outlook, odometer }, first) {
  const { oils, last } = outlook;
  const shown = oils.filter(({ changed }) => changed);
  return html`<li>
    <details ?open=${first}>
      <summary>
        <strong>${short(name)}</strong>
        ${shown.map((oil) => html`<span>${shown.length > 1 ? t(oil.role) : nothing} ${dueLine(oil)}</span>`)}
      </summary>
      ${shown.map((oil) => dueOil(oil, shown.length === 1, last))} ${odometer?.draw(outlook)}
      <p><a class="button quiet" href=${address('record', job)}>${t('due.record')}</a></p>
    </details>
  </li>`;
}
