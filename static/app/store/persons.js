import { limits, loadLimits } from '../core/limits.js';
import { freshBikes } from './bikes.js';
import { end, ofJob, use, write } from './database.js';
import { besideOf, factsIn, outdated } from './facts.js';
import { lineOf } from './log-line.js';
import { survey } from './survey.js';
import * as whole from './whole.js';
import { announceErasing } from './windows.js';
import { newId } from '../site/new-id.js';

/** @import { Event } from '../core/core.d.ts' */
/** @import { Bundle, Fact, JobRecord } from './records.d.ts' */
/** @import { Case } from './survey.js' */

// What is kept of other people: which facts tell of a person, the core knows; a bill names its
// customer. One act takes all of it away.

/** Waits for what the core knows of it; rejects where it can't be had. */
export async function knowPersons() {
  await loadLimits();
  if (!limits.personal) throw new Error('no core');
}

/**
 * Reports whether a fact tells of a person; knowPersons has to be done.
 *
 * @param {Pick<Fact, 'book' | 'kind' | 'what'>} fact
 */
export const personal = (fact) =>
  (limits.personal ?? []).some(
    ({ book, kind, what }) =>
      book === fact.book && kind === fact.kind && (!what || what === fact.what),
  );

/** What a setting may hold of persons: what is due is told by the name of the bike. */
const names = new Set(['doneBy', 'bill', 'due']);

/**
 * Reports whether a setting tells of persons, the one who has this phone among them.
 *
 * @param {string} key
 */
export const ofPersons = (key) => names.has(key);

/**
 * Reports whether an event is an estimate or a bill that names a customer, or may.
 *
 * @param {Event} event
 */
export function namesCustomer({ kind, text }) {
  if (kind !== 'bill') return false;
  try {
    return Boolean(JSON.parse(text ?? '').customer);
  } catch {
    return true;
  }
}

/** Drafts of what is told of a job's steps, of cards and of calculations: of nobody. */
const impersonal = /^(job\/[^/]*\/ |card |calculation\/)/;

/**
 * What a picture goes by that is of a fact; other pictures of it have another ending.
 *
 * @param {string} of
 * @param {string} id
 */
export const factPicture = (of, id) => JSON.stringify([of, id.split('~')[0]]);

/**
 * Whether anything here may tell of persons: a fact that does, or a bill. It is a quick look.
 *
 * @returns {Promise<boolean>}
 */
export async function anyPersons() {
  await loadLimits();
  if ((await use((db) => db.getAllKeys('settings'))).includes('bill')) return true;
  for await (const chunk of whole.chunks('facts', 500)) if (chunk.some(personal)) return true;
  return false;
}

/** What is kept of persons here, or was typed: @typedef {Awaited<ReturnType<typeof personsHere>>} Persons */

/** Looks through the store for what tells of persons. */
export async function personsHere() {
  await knowPersons();
  /** @type {{ facts: Fact[], beside: any[], photos: [string, string][], papers: number, others: number, jobs: (Case & { gone: Set<string> })[] }} */
  const found = { facts: [], beside: [], photos: [], papers: 0, others: 0, jobs: [] };
  const pictures = { personal: new Set(), others: new Set() };
  const note = (/** @type {Fact} */ fact) =>
    pictures[personal(fact) ? 'personal' : 'others'].add(factPicture(fact.of, fact.id));
  for await (const chunk of whole.chunks('facts', 500)) {
    chunk.forEach(note);
    found.facts.push(...chunk.filter(personal));
  }
  for await (const chunk of whole.chunks('beside', 100))
    for (const row of chunk) {
      const [fact] = factsIn(row);
      const { job, kind, id, text } = row;
      if (fact && personal(fact)) note(fact);
      else if (kind !== 'event' || !namesCustomer(readText(text))) continue;
      found.beside.push([job, kind, id, text]);
    }
  for await (const chunk of whole.chunks('jobs', 50)) await bills(chunk, found);
  const jobs = await whole.keysOf('jobs');
  for (const [of, id] of await use((db) => db.getAllKeys('photos'))) {
    const picture = factPicture(of, id);
    // Nobody knows what one shows that is of nothing that is here.
    const known = jobs.has(of) || pictures.others.has(picture);
    if (pictures.personal.has(picture) || !known) found.photos.push([of, id]);
  }
  const drafts = (await use((db) => db.getAllKeys('drafts'))).filter(
    (key) => !impersonal.test(key),
  );
  found.others = drafts.length + (await whole.aside()).length;
  return found;
}

/** @param {string} text */
function readText(text) {
  try {
    return JSON.parse(text);
  } catch {
    return {};
  }
}

/**
 * The bills of these jobs that name a customer, and the jobs without them.
 *
 * @param {JobRecord[]} jobs
 * @param {{ papers: number, jobs: (Case & { gone: Set<string> })[] }} found
 */
async function bills(jobs, found) {
  const ids = jobs.map(({ id }) => id);
  const [told, beside] = await Promise.all([whole.eventsOf(ids), whole.besideOf(ids)]);
  for (const [n, record] of jobs.entries()) {
    const all = told[n] ?? [];
    const named = new Set(all.flatMap((event) => (namesCustomer(event) ? [event.id] : [])));
    if (!named.size) continue;
    found.papers += named.size;
    const gone = all.filter(({ id, of = '' }) => named.has(id) || named.has(of ?? ''));
    const events = all.filter((event) => !gone.includes(event));
    found.jobs.push({
      gone: new Set(gone.map(({ id }) => id)),
      record,
      events: events.map(({ job: _, ...event }) => event),
      beside: beside[n] ?? [],
    });
  }
}

/**
 * Takes away for good what tells of persons: facts, their pictures, bills that name a customer,
 * what was typed and not entered, and what can't be read, of which nobody knows what it tells.
 * The page has to load again then, and so do the other windows.
 *
 * @param {Persons} found
 */
export async function erasePersons(found) {
  const summaries = await survey(found.jobs);
  const drafts = await use((db) => db.getAllKeys('drafts'));
  await write(
    [
      'facts',
      'photos',
      'beside',
      'aside',
      'drafts',
      'jobs',
      'log',
      'events',
      'bundles',
      'bikes',
      'settings',
    ],
    (tx) => {
      const of = (/** @type {string} */ name) => tx.objectStore(name);
      for (const { book, of: subject, id } of found.facts) {
        of('facts').delete([book, subject, id]);
        of('beside').delete(ofJob(besideOf(book, subject), 'fact', id));
      }
      for (const key of found.photos) of('photos').delete(key);
      for (const key of found.beside) of('beside').delete(key);
      for (const key of drafts) if (!impersonal.test(key)) of('drafts').delete(key);
      of('aside').clear();
      for (const [n, { record, gone }] of found.jobs.entries()) {
        const { summary = record.summary } = summaries[n] ?? {};
        of('jobs').put({ ...record, summary });
        of('log').put(lineOf({ ...record, summary }));
        for (const id of gone) of('events').delete([record.id, id]);
        unbundle(tx, record.id, gone);
      }
      of('settings').delete('due');
      // A window that holds a job must not take it for the browser's doing, and put it back.
      of('settings').put(newId(), 'erased');
      outdated(tx, found.facts);
    },
  );
  await freshBikes().catch(() => {}); // it is made at the next start
  announceErasing();
  end();
}

/**
 * Takes events out of those that came in as a whole.
 *
 * @param {IDBTransaction} tx
 * @param {string} job
 * @param {Set<string>} gone
 */
function unbundle(tx, job, gone) {
  const bundles = tx.objectStore('bundles');
  const asked = bundles.get(job);
  asked.onsuccess = () => {
    if (!asked.result) return;
    const { events } = /** @type {Bundle} */ (asked.result);
    bundles.put({ job, events: events.filter(({ id }) => !gone.has(id)) });
  };
}
