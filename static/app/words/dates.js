// Days and months as people here write them.
const language = () => document.documentElement.lang;
/** @param {string} text */
const utc = (text) => new Date(`${text.length === 7 ? `${text}-01` : text}T00:00:00Z`);

/**
 * A day, "2027-05-03".
 *
 * @param {string} day
 */
export const dayText = (day) =>
  utc(day).toLocaleDateString(language(), { dateStyle: 'medium', timeZone: 'UTC' });

/**
 * The months from "2027-03" to "2027-05", or the one.
 *
 * @param {string} from
 * @param {string} [to]
 */
export const monthsText = (from, to = from) =>
  new Intl.DateTimeFormat(language(), {
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  }).formatRange(utc(from), utc(to));

/**
 * A day, in the phone's own way of writing it.
 *
 * @param {string} iso
 */
export const day = (iso) =>
  new Date(iso).toLocaleDateString(document.documentElement.lang, { dateStyle: 'medium' });

/**
 * A date and time of the record, in the phone's own way of writing it.
 *
 * @param {string} iso
 */
export function when(iso) {
  const date = new Date(iso);
  return Number.isNaN(date.getTime())
    ? iso
    : date.toLocaleString(document.documentElement.lang, {
        dateStyle: 'medium',
        timeStyle: 'short',
      });
}

/**
 * The day here, "2026-11-25": now, or at another moment.
 *
 * @param {Date} [now]
 */
export function today(now = new Date()) {
  /** @param {number} n */
  const two = (n) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
