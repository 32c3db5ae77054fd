// Days and months as people here write them.
const language = () => document.documentElement.lang;
const utc = (text) => new Date(`${text.length === 7 ? `${text}-01` : text}T00:00:00Z`);

/** A day, "2027-05-03". */
export const dayText = (day) =>
  utc(day).toLocaleDateString(language(), { dateStyle: 'medium', timeZone: 'UTC' });

/** The months from "2027-03" to "2027-05", or the one. */
export const monthsText = (from, to = from) =>
  new Intl.DateTimeFormat(language(), {
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  }).formatRange(utc(from), utc(to));
