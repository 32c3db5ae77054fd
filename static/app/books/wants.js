import { bikeAt } from '../store/bike-at.js';
import { bikeName } from '../store/bike-name.js';
import { openJob } from '../store/kept-job.js';
import { laidOver } from '../store/over-card.js';
import { settings } from '../store/settings.js';
import * as store from '../store/store.js';

const most = 30; // jobs, and bikes, whose lists are looked at

/** The open jobs want this of the shelf, for the operation `shelf`: the newest first. */
async function openWants() {
  const open = (await store.log()).filter(({ summary }) => (summary.phase ?? 'open') === 'open');
  const wants = [];
  for (const { id, name } of open.slice(0, most)) {
    const { record } = await openJob(id);
    if (record) wants.push({ id, name, card: record.card, bench: record.bench });
  }
  return wants;
}

/** A bike that was put on the list wants what a plain change of its oil does. */
async function bikeWant(id) {
  const { late, ...soon } = await bikeAt(id);
  const { card, row } = (await late) ?? soon;
  if (!card) return [];
  const laid = await laidOver(card, row?.figures);
  const name = bikeName(row, `${card.make} ${card.model}`);
  return [{ id, name, card: laid.card, bench: { system: settings.system } }];
}

/**
 * What the open jobs and those bikes want of the shelf.
 *
 * @param {string[]} bikes
 */
export async function wantsOf(bikes) {
  const wants = await openWants();
  for (const id of bikes.slice(0, most)) wants.push(...(await bikeWant(id)));
  return wants;
}

/**
 * The bikes that may be put on a list, by id: those on which something was done, or of
 * which something is told.
 *
 * @returns {Promise<Map<string, string>>}
 */
export async function bikesToChoose() {
  const [log, rows] = await Promise.all([store.log(), store.bikeRows()]);
  const gone = new Set(rows.flatMap(({ id, aside, into }) => (aside || into ? [id] : [])));
  const names = new Map();
  for (const row of rows) names.set(row.id, bikeName(row, ''));
  for (const { bike, name } of log) names.set(bike, name);
  return new Map([...names].filter(([id, name]) => id && name && !gone.has(id)));
}

/**
 * What a job that the core has worked out wants: of its oils what was poured.
 *
 * @param {import('../plain/open.js').WorkedOut} job
 */
export const wantOf = ({ record, state }) => ({
  id: record.id,
  name: record.name,
  card: record.card,
  bench: record.bench,
  poured: (state.oils ?? []).flatMap((oil) =>
    oil.in ? [{ circuit: oil.circuit, in: oil.in }] : [],
  ),
});
