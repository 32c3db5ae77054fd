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

/** "10W-40" is found as "10w40" too, and a plate however it is parted. */
export const unparted = (sign = '') => sign.replace(/[^\p{L}\p{N}]/gu, '');

/**
 * The bikes in their order: one's own, of which the pinned come first, then those used or
 * changed last, then by name; the samples last that no job was done on. `lines` are the own
 * cards' as the store gives them, `word` gives the sentence of a word id. What comes out is
 * [{key, bike, own, mine, pinned, changed, twin, volume, text}]; twins share their id.
 */
export function bikeList(lines, samples, jobs, word) {
  const used = new Map();
  for (const { bike, started } of jobs) if (!(used.get(bike) > started)) used.set(bike, started);
  const ids = new Map();
  for (const { bike } of lines) ids.set(bike.id, (ids.get(bike.id) ?? 0) + 1);
  const row = (line) => {
    const { id, name, years, layout, oils = [] } = line.bike;
    const [{ due, grades = [] } = {}] = oils;
    const [volume = ''] = due?.texts ?? [];
    const said = [cut(name, most).text, everyYear(years), word(layout), volume, ...grades];
    const text = plain([...said, ...grades.map(unparted)].join(' '));
    const last = [used.get(id) ?? '', line.changed ?? ''].sort()[1];
    return { ...line, mine: Boolean(line.own || last), last, volume, text };
  };
  const own = lines.map((line) =>
    row({ ...line, own: true, twin: ids.get(line.bike.id) > 1, pinned: Boolean(line.pinned) }),
  );
  const rows = [...own, ...samples.map((bike) => row({ key: bike.id, bike, pinned: false }))];
  const rank = (line) => Number(line.mine) + Number(line.pinned);
  return rows.sort(
    (a, b) =>
      rank(b) - rank(a) || order(b.last, a.last) || (a.mine && b.mine ? order(a.text, b.text) : 0),
  );
}

const order = (a, b) => (a < b ? -1 : a > b ? 1 : 0);
