// How two stores become one. Each rule picks one of two records with one key, and
// depends on nothing but the two: so backups combine in any order, any number of
// times, to the same store (test/merge.test.js).

import { own } from '../site/own.js';

/** A record's text in which the order of its members does not matter. */
export function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical)}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  const names = Object.keys(value).filter((name) => own(value, name) !== undefined);
  return `{${names.sort().map((name) => `${JSON.stringify(name)}:${canonical(own(value, name))}`)}}`;
}

const larger = (a, b) => (canonical(a) >= canonical(b) ? a : b);

// The summary of a job follows from its events, and is made anew after a merge.
const lasting = ({ summary: _, ...job }) => job;

/** By kind of record: which of two with one key stays. */
export const rules = {
  // Neither is ever changed where it was made; should two differ, either would do.
  event: larger,
  photo: larger, // {job, id, what, data}
  job: (a, b) => (canonical(lasting(a)) >= canonical(lasting(b)) ? a : b),
  // What was changed last stays.
  card: (a, b) => (a.changed === b.changed ? larger(a, b) : a.changed > b.changed ? a : b),
};

/** What stays of the record that is here, if any, and one that comes in. */
export const merged = (kind, here, incoming) =>
  here === undefined ? incoming : own(rules, kind)?.(here, incoming);

/** Reports whether two records are the same but for a job's summary. */
export const same = (a, b) =>
  a !== undefined && b !== undefined && canonical(lasting(a)) === canonical(lasting(b));
