import { limits } from '../core/limits.js';
import { survey } from '../store/survey.js';
import { refused } from './shapes.js';

/** @import { Event, Finding } from '../core/core.d.ts' */
/** @import { Case } from '../store/survey.js' */

// What the core says of records one by one, where a look at the whole is not enough.

const bytesOfLetter = 3; // at most
const encoder = new TextEncoder();

// An event can be read or not, whatever job it is of.
const anyJob = {
  id: '',
  name: '',
  started: '2026-01-01T00:00:00.000Z',
  bench: {},
  card: {
    format: 'tidysump-card',
    version: 1,
    id: 'any',
    make: 'Any',
    model: 'Bike',
    layout: 'wet-sump',
    circuits: [{ id: 'engine', role: 'engine' }],
  },
};

/**
 * Why each of these events can't be read; undefined for each that can.
 *
 * @param {(Event & { id: string })[]} events
 * @returns {Promise<(Finding | undefined)[]>}
 */
export async function unreadOf(events) {
  const cases = events.map((event) => ({
    record: /** @type {any} */ (anyJob),
    events: [event],
    beside: [],
  }));
  return (await survey(cases)).map(({ summary, findings: [found] = [] }) =>
    summary && !summary.unread ? undefined : reasonOf(found),
  );
}

/** Why an event can't be read: of itself, not of an entry in a job. */
function reasonOf(found) {
  const member = found?.values?.member;
  return found && !member ? found : refused('record-form', { member: member ?? 'event' });
}

/**
 * How many of these events, from the first, may come to those that are here, so that the
 * job stays one that can be worked out.
 *
 * @param {Case} job with the new ones last
 * @param {number} count of the new ones
 */
export async function roomFor(job, count) {
  const before = job.events.length - count;
  const fits = async (many) => {
    const events = job.events.slice(0, before + many);
    if (bytesOf(events) > (limits.events ?? Infinity)) return false;
    const [{ summary }] = await survey([{ ...job, events }]);
    return Boolean(summary);
  };
  let [low, high] = [0, count + 1]; // low fits, or nothing does; high doesn't
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (await fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Reports whether events are more than a job may have. */
export const tooMany = (events) => bytesOf(events) > (limits.events ?? Infinity);

/** How many bytes events have, as far as it can matter. */
function bytesOf(events) {
  const text = JSON.stringify(events);
  return text.length < (limits.events ?? 0) / bytesOfLetter
    ? text.length
    : encoder.encode(text).length;
}
