import { call } from '../core/client.js';
import { limits, loadLimits } from '../core/limits.js';
import { bikeRow, bikeRows } from '../store/bikes.js';
import { historyOf } from '../store/history.js';
import { openJob } from '../store/kept-job.js';
import { settings } from '../store/settings.js';
import * as store from '../store/store.js';
import { today } from '../words/dates.js';

/** @import { LogLine } from '../store/records.d.ts' */

const envelope = 1000; // bytes of the input round the jobs

/** The jobs of each bike, the newest first: bike -> lines. `jobs` are lines of the log. */
export function byBike(jobs) {
  const bikes = new Map();
  for (const job of jobs) {
    if (!bikes.has(job.bike)) bikes.set(job.bike, []);
    bikes.get(job.bike).push(job);
  }
  return bikes;
}

/**
 * What the odometer of a bike, and of those that went into it, showed between jobs.
 *
 * @param {string | undefined} bike
 */
async function readOf(bike) {
  const rows = await bikeRows();
  return rows.flatMap(({ id, into, odometer = [] }) =>
    id === bike || into === bike ? odometer : [],
  );
}

/**
 * When the oils of a bike are due again, from the lines of its jobs, the newest
 * first, and what its odometer showed between them; or undefined. `severe` takes the
 * place of what the newest one says about its use.
 *
 * @param {LogLine[]} jobs
 * @param {boolean | null} [severe]
 * @param {string} [bike] its id, where it may have no jobs
 */
export async function outlookOf(jobs, severe, bike = jobs[0]?.bike) {
  await loadLimits();
  /** @type {string[]} */
  const entries = [];
  let size = envelope;
  for (const { id } of jobs.slice(0, limits.jobs)) {
    const { record, events, beside } = await openJob(id);
    if (!record) continue; // gone since it was listed
    const entry = JSON.stringify(historyOf(record, events, beside));
    size += new Blob([entry]).size;
    if (size > (limits.call ?? Infinity) && entries.length) break;
    entries.unshift(entry);
  }
  if (severe !== undefined && entries.length) {
    const newest = JSON.parse(entries.pop() ?? '');
    entries.push(JSON.stringify({ ...newest, bench: { ...newest.bench, severe } }));
  }
  const { system } = settings;
  const head = JSON.stringify({ system, today: today(), read: await readOf(bike) });
  const input = `${head.slice(0, -1)},"jobs":[${entries.join(',')}]}`;
  return (await call('due', input)).ok;
}

/** Notes from which day on each bike is to be looked at: the first screen asks no core. */
export async function remember(id, name, outlook) {
  const others = ((await store.setting('due')) ?? []).filter((bike) => bike.id !== id);
  const { remind, last, oils = [], first } = outlook ?? {};
  const { day, at } = oils.find(({ circuit }) => circuit === first) ?? {};
  // What lists show beside the bike, as far as it is known.
  const shown = { ...(last && { read: last.day }), ...(day && { day }), ...(at && { at: at[0] }) };
  const aside = (await bikeRow(id))?.aside; // nobody here changes its oil
  const own = remind && !aside ? [{ id, name, remind, ...shown }] : [];
  const all = [...others, ...own].sort((a, b) => (a.remind < b.remind ? -1 : 1));
  await store.saveSetting('due', all);
}
