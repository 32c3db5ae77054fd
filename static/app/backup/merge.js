// How what comes in joins what is here. A job's records and events are a set of contents
// under ids: nothing that is here is replaced or removed, what is here counts, and
// another content goes beside it. So stores combine in any order, any number of times,
// to the same contents (merge.test.js).

import { own } from '../site/own.js';

/** @import { Event } from '../core/core.d.ts' */
/** @import { Beside, Fact, JobRecord } from '../store/records.d.ts' */

/** A record's text in which the order of its members does not matter. */
export function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical)}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  const names = Object.keys(value).filter((name) => own(value, name) !== undefined);
  return `{${names.sort().map((name) => `${JSON.stringify(name)}:${canonical(own(value, name))}`)}}`;
}

/** Reports whether two records have the same content. */
export const same = (a, b) =>
  a === b || JSON.stringify(a) === JSON.stringify(b) || canonical(a) === canonical(b);

/**
 * A job's record without what follows from its events.
 *
 * @param {JobRecord} record
 * @returns {JobRecord}
 */
export const lasting = ({ summary: _, ...record }) => record;

/** @param {JobRecord} record */
const stepless = ({ steps: _, ...record }) => record;

/** Reports whether a record says what another does, but for the steps, which it lacks. */
const lacksSteps = (less, more) => !less.steps && Boolean(more.steps) && same(less, stepless(more));

/**
 * Reports whether steps that come in may be those that a job began with: what was done
 * in it is among them.
 *
 * @param {string[] | undefined} steps
 * @param {Event[]} events
 */
function couldBeOf(steps, events) {
  const known = new Set(steps);
  return events.every(({ kind, step }) => kind !== 'done' || known.has(step ?? ''));
}

/**
 * @typedef {object} Held what is here of a job
 * @property {JobRecord} [record]
 * @property {(Event & { id: string })[]} events
 * @property {Beside[]} beside
 *
 * @typedef {object} Coming what comes in, in the order in which it would count
 * @property {JobRecord[]} records
 * @property {(Event & { id: string })[]} events
 */

/**
 * What changes when a job comes in: its `record` where there was none, or it lacked the
 * steps that it began with; `events` that are new; other contents, which go `beside`; and
 * what of that which comes in these are made `from`.
 *
 * @param {string} job
 * @param {Held} here
 * @param {Coming} coming
 */
export function merged(job, here, coming) {
  const beside = new Set(here.beside.map(keyOf));
  /** @type {{ record?: JobRecord, events: (Event & { id: string })[], beside: Beside[], from: any[] }} */
  const fresh = { events: [], beside: [], from: [] };
  const others = (kind, id, value, from) => {
    const row = { job, kind, id, text: canonical(value) };
    if (beside.has(keyOf(row))) return;
    beside.add(keyOf(row));
    fresh.beside.push(row);
    fresh.from.push(from);
  };
  let record = here.record && lasting(here.record);
  for (const from of coming.records) {
    const other = lasting(from);
    if (record && (same(record, other) || lacksSteps(other, record))) continue;
    const learns = record && lacksSteps(record, other) && couldBeOf(other.steps, here.events);
    if (record && !learns) others('job', '', other, from);
    else {
      record = fresh.record = other;
      fresh.from.push(from);
    }
  }
  const events = new Map(here.events.map((event) => [event.id, event]));
  for (const event of coming.events) {
    const mine = events.get(event.id);
    if (mine && same(mine, event)) continue;
    if (mine) others('event', event.id, event, event);
    else {
      events.set(event.id, event);
      fresh.events.push(event);
      fresh.from.push(event);
    }
  }
  return fresh;
}

/**
 * What changes when contents of one fact come in. Of all that are known of it that one stands
 * whose canonical text sorts first, on every phone alike; the others go beside it.
 *
 * @param {{ fact?: Fact, beside: string[] }} here what is here of it: that which stands, the texts of the others
 * @param {Fact[]} coming
 * @returns {{ fact?: Fact, beside: string[] }} that which stands now, where it is another; texts that are new beside it
 */
export function mergedFact(here, coming) {
  const stood = here.fact && canonical(here.fact);
  const known = new Set([...(stood === undefined ? [] : [stood]), ...here.beside]);
  const fresh = new Map(coming.map((fact) => [canonical(fact), fact]));
  for (const text of known) fresh.delete(text);
  const [first] = [...known, ...fresh.keys()].sort();
  const fact = fresh.get(first ?? '');
  const beside = [...fresh.keys()].filter((text) => text !== first);
  if (fact && stood !== undefined) beside.push(stood);
  return { fact, beside };
}

/** @type {(row: Beside) => string} */
const keyOf = ({ kind, id, text }) => JSON.stringify([kind, id, text]);
