import { hasWord, t, verbatim } from '../words/catalogue.js';
import { shortened } from '../words/cut.js';
import { when } from '../words/dates.js';

/** @import { Event } from '../core/core.d.ts' */
/** @import { Job } from '../store/job.js' */

// An entry of a job in words, as it lies in the store: nothing is worked out, so that
// it can be read whatever the core makes of it.

const most = 4000; // letters of what somebody wrote
const briefly = 80;

/** Whatever stands in a file, as a text. */
const written = (value, letters = most) => {
  const whole = typeof value === 'string' ? value : (JSON.stringify(value) ?? '');
  return shortened(whole, letters);
};

/** The sentence of a word, else what stands there. */
const named = (stem, id) => (hasWord(stem + id) ? t(stem + id) : written(id, briefly));

/**
 * What a reading or a step is of: an oil by its role, a fastener by what it is; else the id.
 *
 * @param {Partial<Job>} job
 * @param {unknown} id
 */
function subject({ record }, id) {
  const { circuits, bolts } = Object(record?.card);
  const withId = (list) => (Array.isArray(list) ? list.find((one) => one?.id === id) : undefined);
  const [oil, fastener] = [withId(circuits), withId(bolts)];
  const word = oil ? `role.${oil.role}` : `purpose.${fastener?.purpose}`;
  return hasWord(word) ? t(word) : written(id, briefly);
}

/**
 * The name of a step: as the plan has it, else by the longest word that its id begins
 * with, "tighten-drain"; else the id.
 *
 * @param {Partial<Job>} job
 * @param {unknown} id
 */
export function stepName(job, id) {
  const step = job.plan?.steps?.find((one) => one.id === id);
  if (step) return t(step.word, step.values);
  const whole = written(id, briefly);
  for (let end = whole.length; end > 0; end = whole.lastIndexOf('-', end - 1)) {
    const rest = whole.slice(end + 1);
    const of = subject(job, rest);
    const values = { of, purpose: of, count: '' };
    const word = `step.${whole.slice(0, end)}`;
    if (hasWord(word)) return t(word, values).replace(/[\s:]+$/, '');
  }
  return verbatim(whole);
}

const chosenFrom = ['level', 'leak'];

/** What was read: one of the words of a choice, or as it was typed. */
const chosen = (what, value) =>
  chosenFrom.includes(what) ? named(`${what}.`, value) : written(value);

/** Answers by what was asked: "Noise: no". */
const signs = (list) =>
  Object.entries(Object(list)).map(
    ([name, value]) =>
      `${named(name === 'hand' ? 'trouble.' : 'ask.', name)}: ${written(value, briefly)}`,
  );

/** What was typed of a bill, line by line. */
function bill(typed) {
  try {
    const { lines = [], number, customer } = JSON.parse(typed);
    const line = ({ text: what, count, price }) =>
      [what, count, price]
        .filter(Boolean)
        .map((part) => written(part, briefly))
        .join(', ');
    return [number, customer]
      .filter(Boolean)
      .map((part) => written(part, briefly))
      .concat(lines.map(line));
  } catch {
    return [written(typed)];
  }
}

/** @type {Map<string, (event: any, job: any) => string[]>} */
const ofKind = new Map(
  Object.entries({
    done: () => [],
    finish: () => [],
    note: ({ text: note }) => [written(note)],
    photo: ({ what }) => [named('photo.what.', what)],
    reading: ({ what, of, value }, job) => [
      `${named('ask.', what)}${of ? `, ${subject(job, of)}` : ''}: ${chosen(what, value)}`,
    ],
    timer: ({ what, until }) => [
      named('timer.', what),
      t('event.until', { date: when(written(until, briefly)) }),
    ],
    problem: ({ what, value, signs: answers }) => [
      `${named('fault.', what)}: ${named('outcome.', value)}`,
      ...signs(answers),
    ],
    look: ({ signs: answers }) => signs(answers),
    bill: ({ what, text: typed }) => [named('bill.what.', what), ...bill(typed)],
    undo: ({ of }, job) => [aboutOther(job, of)],
    choose: ({ of }, job) => [aboutOther(job, of)],
  }),
);

/** Another entry, in a few words. */
function aboutOther(job, id) {
  const other = job.events?.find((event) => event.id === id);
  if (!other) return t('event.not-here');
  const { kind, step } = other;
  return [kindOf(kind), step && stepName(job, step), when(written(other.time, briefly))]
    .filter(Boolean)
    .join(', ');
}

const kindOf = (kind) =>
  hasWord(`event.${kind}`)
    ? t(`event.${kind}`)
    : t('event.other', { kind: written(kind, briefly) });

/** What stands in an entry of a kind that is not known here. */
const everything = ({ id: _, time: __, seq: ___, day: ____, kind: _____, step: ______, ...rest }) =>
  Object.entries(rest).map(([name, value]) => `${written(name, briefly)}: ${written(value)}`);

/**
 * What an entry says: {kind, step, parts}, all of them texts.
 *
 * @param {Event} event
 * @param {Partial<Job>} job
 */
export function eventLine(event, job) {
  const parts = (ofKind.get(event.kind ?? '') ?? everything)(event, job);
  return {
    kind: kindOf(event.kind),
    step: event.step ? stepName(job, event.step) : '',
    parts: parts.filter(Boolean).map(verbatim),
  };
}
