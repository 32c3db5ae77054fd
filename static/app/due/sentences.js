import { t, text } from '../words/catalogue.js';
import { dayText, monthsText } from '../words/dates.js';

/** Where an oil is due: odometer, hours, day, as far as they are known. */
export const dueMarks = ({ at, hours, day }) =>
  [at?.[0], hours, day && dayText(day)].filter(Boolean).map(text);

/** Where an oil is due, in a sentence: "at 26000 km or by 2 Jun 2027, whichever comes first". */
export function whenDue({ at, hours, day }) {
  const parts = [
    at && t('due.at', { at: at[0] }),
    hours && t('due.at', { at: hours }),
    day && t('due.by', { day: dayText(day) }),
  ].filter(Boolean);
  return parts.length > 1
    ? t('due.or', { one: parts.slice(0, -1).join(', '), other: parts.at(-1) })
    : (parts[0] ?? text('@not-known'));
}

/** About when that will be, and which of them comes first. */
export function windowOf({ from, to, why }) {
  const months = from && monthsText(from, to);
  return [months && t(to ? 'due.window' : 'due.window.open', { months }), why && t(why)]
    .filter(Boolean)
    .join(' ');
}
