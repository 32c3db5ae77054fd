import { batches } from '../core/batches.js';
import { call, core } from '../core/client.js';
import { loadLimits } from '../core/limits.js';
import { inTurn } from '../site/in-turn.js';
import { use, write } from './database.js';
import { aboutLast, factsOf, tell } from './facts.js';
import { bikeRows, saveSetting, setting } from './store.js';
import { announceFacts } from './windows.js';

/** @import { Bike } from '../core/core.d.ts' */
/** @import { BikeRow, Fact } from './records.d.ts' */

// What lists show of the bikes: it follows from what was told of them, and is made anew by the
// core when that has changed, after a merge, and by a new version of the app.

export { bikeRows } from './store.js';

/**
 * What is told of a bike; undefined where nothing is.
 *
 * @param {string} id
 */
export const bikeRow = (id) => use((db) => db.get('bikes', id));

/**
 * Tells something of a bike: {kind, what, value, text, signs}. Resolves to the findings about
 * it; it is kept when none of them refuses, and what lists show of the bike is made anew.
 *
 * @param {string} id
 * @param {Parameters<typeof tell>[2]} told
 * @param {Omit<NonNullable<Parameters<typeof tell>[3]>, 'check'>} [how]
 */
export async function tellBike(id, told, how = {}) {
  // Whether one may be joined with another depends on what that was joined with.
  const all = told.kind === 'joined' ? await factsOf('bike') : [];
  const others = all.filter(({ of }) => of !== id);
  const check = async (/** @type {Fact[]} */ own) => {
    const facts = [...others, ...own];
    return aboutLast(await call('garage', { facts, adding: true }), facts.length - 1);
  };
  const findings = await tell('bike', id, told, { ...how, check });
  await freshBikes();
  return findings;
}

/**
 * The facts of bikes that go to the core together: those of a bike, of all that it was joined
 * with, and of all that the same job was moved to.
 *
 * @param {Fact[]} facts
 * @returns {Fact[][]}
 */
export function tied(facts) {
  /** @type {Map<string, string>} */
  const tied = new Map();
  const root = (/** @type {string} */ name) => {
    let at = name;
    for (let up = tied.get(at); up !== undefined; up = tied.get(at)) at = up;
    if (at !== name) tied.set(name, at);
    return at;
  };
  const tie = (/** @type {string} */ a, /** @type {string} */ b) => {
    const [one, other] = [root(a), root(b)];
    if (one !== other) tied.set(one, other);
  };
  for (const { of, kind, what, value } of facts)
    if (kind === 'joined') tie(`bike ${of}`, `bike ${value}`);
    else if (kind === 'job') tie(`bike ${of}`, `job ${what}`);
  /** @type {Map<string, Fact[]>} */
  const groups = new Map();
  for (const fact of facts) {
    const group = root(`bike ${fact.of}`);
    const list = groups.get(group) ?? [];
    list.push(fact);
    groups.set(group, list);
  }
  return [...groups.values()];
}

const making = inTurn();

/**
 * Makes anew what lists show of the bikes of which something has changed since; of all of
 * them, where `all` says so. Without a core it stays as it is, and is made at the next start.
 *
 * @param {boolean} [all]
 */
export const freshBikes = (all = false) => making(() => makeFresh(all));

/** @param {boolean} all */
async function makeFresh(all) {
  const rows = await bikeRows();
  const stale = new Map(rows.map((row) => [row.id, row.stale]));
  const changed = new Set(rows.flatMap((row) => (row.stale ? [row.id] : [])));
  if (!changed.size && !all) return;
  const facts = await factsOf('bike');
  const groups = tied(facts).filter((group) => all || group.some(({ of }) => changed.has(of)));
  await loadLimits();
  const asked = groups.values();
  for (const batch of batches(groups.map(textOf))) {
    const ids = new Set(batch.flatMap(() => asked.next().value?.map(({ of }) => of) ?? []));
    const { ok } = await call('garage', `{"facts":[${batch}],"adding":false}`);
    if (!ok) continue; // it is made at the next start
    const made = dated(ok.bikes ?? [], facts);
    for (const { id } of made) ids.delete(id); // of the others nothing stands
    await putRows(made, stale, ids);
    await dropDue(made);
  }
  const told = new Set(facts.map(({ of }) => of));
  const gone = rows.flatMap(({ id }) => (told.has(id) ? [] : [id]));
  await putRows([], stale, gone);
  announceFacts('bike', ''); // what lists show of them is so now
}

/**
 * These bikes, each with the time of its newest fact.
 *
 * @param {Bike[]} bikes
 * @param {Fact[]} facts
 * @returns {BikeRow[]}
 */
function dated(bikes, facts) {
  /** @type {Map<string, string>} */
  const times = new Map();
  for (const { of, time } of facts) if (!((times.get(of) ?? '') > time)) times.set(of, time);
  return bikes.map((bike) => ({ ...bike, changed: times.get(bike.id) }));
}

/** @type {(facts: Fact[]) => string} */
const textOf = (facts) => facts.map((fact) => JSON.stringify(fact)).join();

/**
 * Writes what the core made, unless facts have come since it was asked.
 *
 * @param {BikeRow[]} made
 * @param {Map<string, string | undefined>} stale
 * @param {Iterable<string>} gone bikes of which nothing is told any more
 */
const putRows = (made, stale, gone) =>
  write(['bikes'], (tx) => {
    const rows = tx.objectStore('bikes');
    const now = (/** @type {string} */ id, /** @type {() => void} */ act) => {
      const asked = rows.get(id);
      asked.onsuccess = () => asked.result?.stale === stale.get(id) && act();
    };
    for (const row of made) now(row.id, () => rows.put(row));
    for (const id of gone) now(id, () => rows.delete(id));
  });

/**
 * Of a bike that was laid aside, or that went into another, nothing is due any more.
 *
 * @param {BikeRow[]} bikes
 */
async function dropDue(bikes) {
  const gone = new Set(bikes.flatMap(({ id, aside, into }) => (aside || into ? [id] : [])));
  const due = (gone.size && (await setting('due'))) || [];
  const left = due.filter((/** @type {{ id: string }} */ { id }) => !gone.has(id));
  if (left.length < due.length) await saveSetting('due', left);
}

/**
 * Makes anew what lists show of the bikes: of all of them once with each version of the app.
 *
 * @param {string} version
 */
export async function keepBikes(version) {
  const known = (await setting('garage')) === version;
  await freshBikes(!known);
  if (!known && core.state !== 'failed') await saveSetting('garage', version);
}
