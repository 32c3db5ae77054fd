import { call, core } from '../core/client.js';
import { limits, loadLimits } from '../core/limits.js';
import { historyOf } from '../store/history.js';
import { refused } from './shapes.js';

/** @import { Event, Finding, Summary, SurveyedAnswer } from '../core/core.d.ts' */
/** @import { Beside, JobRecord } from '../store/records.d.ts' */

// What the core says of jobs that come in, many in one call. A call that it can't take at
// all is divided, until what is wrong with it stands alone.

/**
 * @typedef {object} Case a job, as it would be
 * @property {JobRecord} record
 * @property {(Event & { id: string })[]} events
 * @property {Beside[]} beside
 */

const lettersOfByte = 1 / 3; // a letter takes three bytes at most
const atOnce = 500_000; // letters of a call: further ones wait for it

const encoder = new TextEncoder();

/** How many letters a call may have, whatever they are. */
const room = () => Math.min((limits.call ?? Infinity) * lettersOfByte, atOnce);

/**
 * Has the core work jobs out: an answer for each.
 *
 * @param {Case[]} cases
 * @returns {Promise<SurveyedAnswer[]>}
 */
export async function survey(cases) {
  await loadLimits();
  const answers = [];
  /** @type {Map<string, number>} */
  let cards = new Map();
  let jobs = [];
  let letters = 0;
  const flush = async () => {
    if (jobs.length) answers.push(...(await ask([...cards.keys()], jobs)));
    [cards, jobs, letters] = [new Map(), [], 0];
  };
  for (const { record, events, beside } of cases) {
    const { card, ...job } = historyOf(record, events, beside);
    const text = JSON.stringify(card);
    const rest = JSON.stringify(job);
    if (letters + rest.length + text.length > room()) await flush();
    if (!cards.has(text)) letters += text.length;
    const place = cards.get(text) ?? cards.size;
    cards.set(text, place);
    jobs.push({ card: place, rest });
    letters += rest.length;
  }
  await flush();
  return answers;
}

/**
 * @param {string[]} cards
 * @param {{ card: number, rest: string }[]} jobs
 * @returns {Promise<SurveyedAnswer[]>}
 */
async function ask(cards, jobs) {
  const texts = jobs.map(({ card, rest }) => `{"card":${card},${rest.slice(1)}`);
  const answer = await call('survey', `{"cards":[${cards}],"jobs":[${texts}]}`);
  if (answer.ok?.jobs?.length === jobs.length) return answer.ok.jobs;
  const { findings = [] } = answer;
  if (core.state === 'failed' || findings[0]?.code === 'core-unavailable')
    throw new Error('no core to read what comes in');
  if (jobs.length === 1) return [{ findings }];
  const half = jobs.length >> 1;
  return [...(await part(cards, jobs.slice(0, half))), ...(await part(cards, jobs.slice(half)))];
}

/** Some of the jobs of a call, with their own cards alone: another's may be what is wrong. */
function part(cards, jobs) {
  const own = [...new Set(jobs.map(({ card }) => card))];
  return ask(
    own.map((card) => cards.at(card)),
    jobs.map(({ card, rest }) => ({ card: own.indexOf(card), rest })),
  );
}

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
  return text.length < (limits.events ?? 0) * lettersOfByte
    ? text.length
    : encoder.encode(text).length;
}
