import { cut } from '../words/cut.js';
import { plain } from '../words/search.js';

// The list of bikes: in which order they stand, and what a search looks at of each.

const most = 200; // letters of a name that a search looks at

/** Each year of "2003–2009", so that 2005 finds it too. */
function everyYear(years = '') {
  const [from, to] = years.split('–').map(Number);
  if (!(to > from) || to - from > most) return years;
  return Array.from({ length: to - from + 1 }, (_, n) => from + n).join(' ');
}

/**
 * The bikes in their order: the pinned, then those used or changed last, then by
 * name; the samples last. `lines` are the own cards' as the store gives them,
 * `word` gives the sentence of a word id. What comes out is
 * [{key, bike, own, pinned, changed, twin, text}]; twins share their id.
 */
export function bikeList(lines, samples, jobs, word) {
  const used = new Map();
  for (const { bike, started } of jobs) if (!(used.get(bike) > started)) used.set(bike, started);
  const ids = new Map();
  for (const { bike } of lines) ids.set(bike.id, (ids.get(bike.id) ?? 0) + 1);
  const row = (line) => {
    const { name, years, layout } = line.bike;
    const text = plain([cut(name, most).text, everyYear(years), word(layout)].join(' '));
    return { ...line, text };
  };
  const own = lines.map((line) => ({
    ...row(line),
    own: true,
    twin: ids.get(line.bike.id) > 1,
    last: [used.get(line.bike.id) ?? '', line.changed].sort()[1],
  }));
  own.sort((a, b) => b.pinned - a.pinned || order(b.last, a.last) || order(a.text, b.text));
  return [...own, ...samples.map((bike) => row({ key: bike.id, bike }))];
}

const order = (a, b) => (a < b ? -1 : a > b ? 1 : 0);
