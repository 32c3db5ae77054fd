import { textsOf } from '../ui/figure.js';
import { hasWord, t, text } from '../words/catalogue.js';
import { saidFigure, saidSentence } from '../words/said.js';
import { own } from '../site/own.js';
import { lists } from './answer.js';

// What is read aloud of a calculation's answer: what stands on the screen, with units as words.

/**
 * A text of a figure, or a word's, as one says it.
 *
 * @param {string} [one]
 */
export const said = (one) => saidFigure(text(one));

/** @param {{ code: string, values?: Record<string, string> }} found */
export const spokenFinding = ({ code, values }) =>
  [`finding.${code}`, `finding.${code}.do`]
    .filter(hasWord)
    .map((id) => t(id, values))
    .join(' ');

const spokenFigure = (figure) => {
  const [first] = textsOf(figure);
  return `${t(figure.name)}: ${first ? saidFigure(first) : t('not-known')}`;
};

const spokenWrench = ({ id, setting, verdict }, take) =>
  [text(id), ...(id === take ? [t('bench.take')] : []), ...(setting ? [said(setting)] : [])].join(
    ', ',
  ) + `: ${t(verdict)}`;

/**
 * The sentences of an answer, in the order of the screen.
 *
 * @param {any} answer
 */
export function spokenAnswer(answer) {
  const {
    verdict,
    warmth,
    notes = [],
    actions = [],
    wrenches,
    take,
    rings = [],
    pours = [],
  } = answer;
  const { texts = [], grades } = answer;
  const [loud, quiet] = [true, false].map((is) =>
    notes.filter(({ grade }) => (grade === 'doubt') === is).map(spokenFinding),
  );
  return [
    ...[verdict, warmth].filter(Boolean).map((id) => t(id)),
    ...loud,
    ...actions.map((id) => t(id)),
    ...(wrenches && !take ? [t('bench.no-wrench')] : []),
    ...(wrenches ?? []).map((wrench) => spokenWrench(wrench, take)),
    ...rings.map((ring) => `${text(ring.id)}, ${said(ring.texts[0])}: ${t(ring.verdict)}`),
    ...pours.map((pour) => `${said(pour.pourTexts[0])}, ${text(pour.id)}: ${t(pour.verdict)}`),
    ...texts.map(said),
    ...Object.entries(lists).flatMap(([name, title]) => {
      const figures = own(answer, name) ?? [];
      return figures.length ? [...(title ? [t(title)] : []), ...figures.map(spokenFigure)] : [];
    }),
    ...(grades ? [t('bench.grades', { grades: grades.join(', ') })] : []),
    ...quiet,
  ].map(saidSentence);
}
