import { html, nothing } from 'lit-html';
import { findings } from '../ui/findings.js';
import { when } from '../words/dates.js';
import { eventLine } from './event-line.js';

/** @import { Event, Finding } from '../core/core.d.ts' */
/** @import { Job } from '../store/job.js' */

/** The place of an entry as it was told, for a list: the core's order is believed instead. */
const told = (/** @type {Event} */ { seq, time, id }) => [
  Number(seq) || 0,
  String(time ?? ''),
  String(id),
];

/**
 * @param {Event} one
 * @param {Event} other
 */
function inOrder(one, other) {
  const [a, b] = [told(one), told(other)];
  const n = a.findIndex((value, at) => value !== b.at(at));
  return n < 0 ? 0 : (a.at(n) ?? '') < (b.at(n) ?? '') ? -1 : 1;
}

/**
 * All entries of a job as they were written, each with what was found about it.
 *
 * @param {Job} job
 */
export function entries(job) {
  const found = [...job.findings, ...(job.state?.findings ?? [])];
  const about = (/** @type {number} */ place) =>
    found.filter(({ where }) => `${where}/`.startsWith(`/events/${place}/`));
  return html`<ol class="entries">
    ${job.events
      .map((event, place) => ({ event, found: about(place) }))
      .sort((a, b) => inOrder(a.event, b.event))
      .map((entry) => html`<li>${line(entry.event, job, entry.found)}</li>`)}
  </ol>`;
}

/**
 * One entry: when, what, at which step, and what was written.
 *
 * @param {Event} event
 * @param {Partial<Job>} job
 * @param {Finding[]} [found]
 */
export function line(event, job, found = []) {
  const { kind, step, parts } = eventLine(event, job);
  return html`<p>
      <small>${when(String(event.time ?? ''))}</small> <strong>${kind}</strong>
      ${step ? html`· <span>${step}</span>` : nothing}
    </p>
    ${parts.map((part) => html`<p class="written">${part}</p>`)} ${findings(found)}`;
}
