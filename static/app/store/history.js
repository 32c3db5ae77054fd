import { today } from '../words/dates.js';

/** @import { Event } from '../core/core.d.ts' */
/** @import { Beside, JobRecord } from './records.d.ts' */

/**
 * The day of a time here; undefined where it is none.
 *
 * @param {unknown} time
 */
function dayOf(time) {
  const date = new Date(typeof time === 'string' ? time : NaN);
  return date.getFullYear() >= 1000 && date.getFullYear() <= 9999 ? today(date) : undefined;
}

/**
 * An event as the core is told it: with its day, which events of earlier versions lack.
 *
 * @template {Event} Of
 * @param {Of} event
 * @returns {Of}
 */
const dated = (event) => {
  const day = event.day === undefined && dayOf(event.time);
  return day ? { ...event, day } : event;
};

/**
 * What the core is told of a job, in every operation that takes one: {card, bench,
 * steps, started, events, beside}.
 *
 * @param {JobRecord} record
 * @param {Event[]} events
 * @param {Beside[]} [beside] the other contents that are known of it
 */
export const historyOf = ({ card, bench, steps, started }, events, beside = []) => ({
  card,
  bench,
  ...(steps && { steps }),
  started,
  events: events.map(dated),
  beside: beside.flatMap(({ kind, text }) => (kind === 'event' ? readOther(text) : [])),
});

/** @param {string} text */
function readOther(text) {
  try {
    const event = JSON.parse(text);
    return event && typeof event === 'object' ? [dated(event)] : [];
  } catch {
    return []; // it is kept all the same
  }
}
