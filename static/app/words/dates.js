import { t } from './catalogue.js';

// Days and times of day are written here and nowhere else: "28 Nov 2026, 14:05". The
// month is a word, so that nobody takes it for the day; the hours are 24.
const language = () => document.documentElement.lang;
/** @param {number} n */
const two = (n) => String(n).padStart(2, '0');
/** @param {string} text */
const utc = (text) => new Date(`${text.length === 7 ? `${text}-01` : text}T00:00:00Z`);

/**
 * A day of the calendar in words. Its numbers are read off in the phone's own zone, or
 * in UTC, in which a bare day stands.
 *
 * @param {Date} date
 * @param {boolean} bare
 */
const written = (date, bare) =>
  t('date.day', {
    day: bare ? date.getUTCDate() : date.getDate(),
    month: new Intl.DateTimeFormat(language(), {
      month: 'short',
      ...(bare && { timeZone: 'UTC' }),
    }).format(date),
    year: bare ? date.getUTCFullYear() : date.getFullYear(),
  });

/**
 * A day, "2027-05-03".
 *
 * @param {string} day
 */
export const dayText = (day) => written(utc(day), true);

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
 * The month of a day, "2027-05-01", as short as it stands in a picture.
 *
 * @param {string} day
 */
export const shortMonth = (day) =>
  utc(day).toLocaleDateString(language(), { month: 'short', year: 'numeric', timeZone: 'UTC' });

/**
 * What is written of a moment of the record; what is no time is given as it stands.
 *
 * @param {string} iso
 * @param {(date: Date) => string} how
 */
function ofMoment(iso, how) {
  const date = new Date(iso);
  return Number.isNaN(date.getTime()) ? iso : how(date);
}

/**
 * The day of a moment, as it was here.
 *
 * @param {string} iso
 */
export const day = (iso) => ofMoment(iso, (date) => written(date, false));

/** @param {Date} date */
const hours = (date) => `${two(date.getHours())}:${two(date.getMinutes())}`;

/**
 * The time of day of a moment, "14:05".
 *
 * @param {string} iso
 */
export const clock = (iso) => ofMoment(iso, hours);

/**
 * The day and the time of a moment.
 *
 * @param {string} iso
 */
export const when = (iso) =>
  ofMoment(iso, (date) => t('date.when', { date: written(date, false), time: hours(date) }));

/**
 * The day here, "2026-11-25": now, or at another moment.
 *
 * @param {Date} [now]
 */
export function today(now = new Date()) {
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
