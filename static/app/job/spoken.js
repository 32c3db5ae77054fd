import { sayItem } from './tally.js';
import { piece } from '../still-open/strip.js';
import { textsOf } from '../ui/figure.js';
import { hasWord, t, text, verbatim } from '../words/catalogue.js';
import { saidFigure, saidSentence } from '../words/said.js';

// What is read aloud of a step: what stands on the screen, with units as words.

const saidValues = (values = {}) =>
  Object.fromEntries(
    Object.entries(values).map(([name, v]) => [name, v.startsWith('@') ? v : saidFigure(v)]),
  );

function saidShown({ name, standing, lookup, ...figure }) {
  const [first] = textsOf(figure);
  const value = first ? saidFigure(first) : t('not-known');
  const origin = first ? t(`standing.${standing}`) : lookup ? t(lookup) : '';
  return `${t(name)}: ${value}. ${saidSentence(origin)}`;
}

/** What the state of the job puts before a step: what was found, and problems that stop the bike. */
function warned({ id }, state) {
  const { warns = [], problems = [], open = [], openAt = [] } = state;
  const at = ({ step }) => step === id;
  const stops = problems.filter(({ stops: stop }) => stop);
  return [
    ...stops.map(({ what, outcome }) => `${t(`fault.${what}`)}: ${t(`outcome.${outcome}`)}`),
    ...openAt.filter(at).flatMap((warn) => [caution(warn), ...open.map(piece)]),
    ...warns.filter(at).map(caution),
  ];
}

const caution = ({ signal, word, short }) =>
  [`${t(`signal.${signal}`)}!`, t(word), ...(short ? [] : [t(`${word}.more`)])].join(' ');

/** The verdict on what came out, and what to do next. */
const decided = ({ verdict = 'look.none', actions = [] }) =>
  [verdict, ...actions].map((id) => t(id));

/** The sentences of a step, in the order of the screen. */
export function spoken(step, state = {}) {
  const values = saidValues(step.values);
  const {
    word,
    warns = [],
    notes = [],
    tally = [],
    takes = [],
    figures = [],
    timers = [],
    asks = [],
    must,
  } = step;
  return [
    t(word, values),
    ...warned(step, state),
    ...warns.map(caution),
    ...notes.map((written) => `${t('job.on-card')} ${verbatim(written)}`),
    t(`${word}.do`, values),
    ...(hasWord(`${word}.more`) ? [t(`${word}.more`, values)] : []),
    ...(step.sums ? decided(state) : []),
    ...(takes.length ? [[t('job.take'), takes.map(sayItem).join(', ')].join(' ')] : []),
    ...tally.map(sayItem),
    ...timers.map(({ name, texts }) =>
      t('hands.timer', { name: t(name), length: saidFigure(text(texts[0])) }),
    ),
    ...figures.map(saidShown),
    ...(must ? [t('job.must')] : []),
    ...asks.map(({ what }) => t('hands.ask', { what: t(`ask.${what}`) })),
  ].map(saidSentence);
}
