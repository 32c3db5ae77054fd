import { isUnanswered } from '../core/answer.js';
import { lettersOfCall } from '../core/batches.js';
import { call, core } from '../core/client.js';
import { limits, loadLimits } from '../core/limits.js';
import { historyOf } from './history.js';

/** @import { Event, SurveyedAnswer, System } from '../core/core.d.ts' */
/** @import { Beside, JobRecord } from './records.d.ts' */

// What the core says of jobs, many in one call. A call that it can't take at all is
// divided, until what is wrong with it stands alone.

/**
 * @typedef {object} Case a job, as it is or would be
 * @property {JobRecord} record
 * @property {(Event & { id: string })[]} events
 * @property {Beside[]} beside
 *
 * @typedef {object} Told a job in the text of a call
 * @property {number} card the place of its card among the call's
 * @property {string} rest
 */

/**
 * Has the core work jobs out: an answer for each. Rejects when there is no core.
 *
 * @param {Case[]} cases
 * @param {{ rows?: boolean, system?: System }} [how] whether to give rows for a table, in which units
 * @returns {Promise<SurveyedAnswer[]>}
 */
export async function survey(cases, how = {}) {
  await loadLimits();
  /** @type {SurveyedAnswer[]} */
  const answers = [];
  /** @type {Map<string, number>} */
  let cards = new Map();
  /** @type {Told[]} */
  let jobs = [];
  let letters = 0;
  const flush = async () => {
    if (jobs.length) answers.push(...(await ask([...cards.keys()], jobs, how)));
    [cards, jobs, letters] = [new Map(), [], 0];
  };
  for (const { record, events, beside } of cases) {
    const { card, ...job } = historyOf(record, events, beside);
    const text = JSON.stringify(card);
    const rest = JSON.stringify(job);
    const full = jobs.length >= (limits.survey ?? Infinity);
    if (full || letters + rest.length + text.length > lettersOfCall()) await flush();
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
 * @param {Told[]} jobs
 * @param {{ rows?: boolean, system?: System }} how
 * @returns {Promise<SurveyedAnswer[]>}
 */
async function ask(cards, jobs, how) {
  const texts = jobs.map(({ card, rest }) => `{"card":${card},${rest.slice(1)}`);
  const others = JSON.stringify(how).slice(1);
  const answer = await call(
    'survey',
    `{"cards":[${cards}],"jobs":[${texts}]${others === '}' ? '' : ','}${others}`,
  );
  if (answer.ok?.jobs?.length === jobs.length) return answer.ok.jobs;
  const { findings = [] } = answer;
  if (core.state === 'failed' || isUnanswered(answer)) throw new Error('no core to work jobs out');
  if (jobs.length === 1) return [{ findings }];
  const half = jobs.length >> 1;
  return [
    ...(await part(cards, jobs.slice(0, half), how)),
    ...(await part(cards, jobs.slice(half), how)),
  ];
}

/**
 * Some of the jobs of a call, with their own cards alone: another's may be what is wrong.
 *
 * @param {string[]} cards
 * @param {Told[]} jobs
 * @param {{ rows?: boolean, system?: System }} how
 */
function part(cards, jobs, how) {
  const own = [...new Set(jobs.map(({ card }) => card))];
  return ask(
    own.map((card) => cards.at(card) ?? ''),
    jobs.map(({ card, rest }) => ({ card: own.indexOf(card), rest })),
    how,
  );
}
