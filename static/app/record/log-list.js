import { plain } from '../words/search.js';
import { own } from '../site/own.js';

// The log of all jobs: what is searched and filtered, of lines that are kept beside
// the jobs.

/** The log's lines as a search sees them; `word` gives a word's sentence. */
export function logList(lines, word) {
  return lines.map((line) => ({ ...line, text: plain(searched(line, word)) }));
}

const searched = ({ name, started, summary }, word) =>
  [
    name,
    started.slice(0, 10),
    summary.odometer,
    summary.said,
    summary.home && word('log.home'),
    summary.verdict && word(summary.verdict),
    ...(summary.oils ?? []).flatMap(({ role, poured, grade }) => [
      word(role),
      poured,
      grade && word('grade.sae', { grade }),
    ]),
  ].join(' ');

// Which lines a filter lets through.
const filters = {
  open: ({ summary }) => summary.phase === 'open',
  waiting: ({ summary }) => summary.phase === 'waiting',
  watch: ({ summary }) => Boolean(summary.watch),
  noted: ({ summary }) => Boolean(summary.notes || summary.photos),
};

/** The names of the filters. */
export const filterNames = Object.keys(filters);

/** The lines of a bike, or of all when there is none, that pass a filter, or any. */
export const filtered = (list, bike, filter) =>
  list.filter((line) => (!bike || line.bike === bike) && (!filter || own(filters, filter)?.(line)));

/** The bikes in the log, those of the newest jobs first: [{bike, name, count}]. */
export function bikesIn(list) {
  const bikes = new Map();
  for (const { bike, name } of list) {
    const known = bikes.get(bike) ?? { bike, name, count: 0 };
    bikes.set(bike, { ...known, count: known.count + 1 });
  }
  return [...bikes.values()];
}
