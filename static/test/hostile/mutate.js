// Changes of a backup as an error or an enemy would make them: of its bytes, of its
// lines, and of what stands in them.
import { Buffer } from 'node:buffer';
import { digestOf, seal } from '../../app/backup/seal.js';

/** @import { Chance } from "../chance.js" */

const loneHalf = '\ud83d'; // half an emoji

/** JSON text that is nested so deep. */
const nested = (depth) => `${'['.repeat(depth)}${']'.repeat(depth)}`;

/** What any value may be replaced by: JSON texts. */
const values = [
  'null',
  'true',
  '0',
  '-1',
  '1.5',
  '1e308',
  '9007199254740993',
  '""',
  '"x"',
  '"__proto__"',
  '"constructor"',
  '[]',
  '[null]',
  '{}',
  '{"__proto__":{"polluted":1}}',
  '{"toString":1}',
  '{"id":{"id":[]}}',
  '"2026-11-25T10:00:00.000Z"',
  '"9999-12-31T23:59:59.999Z"',
  '"0000-00-00T00:00:00.000Z"',
  '"\\ud83d"',
  '"\\udc00 backwards \\ud800"',
  '"\\u0000"',
  '"\\u202e\\u2066"',
  nested(20),
  nested(5000),
];

const times = [
  '9999-12-31T23:59:59.999Z',
  '0001-01-01T00:00:00.000Z',
  '-000001-01-01T00:00:00.000Z',
  '2026-13-45T99:99:99.999Z',
  '2026-11-25',
  'yesterday',
  '',
];

const seqs = ['-1', '0', '1', '2', '1000000000', '9007199254740993', '1.5', '"3"', 'null', '[]'];

/** The places in a value: [[member, …]], from the whole to the smallest. */
function placesIn(value, place = []) {
  const list = [place];
  if (value !== null && typeof value === 'object')
    for (const [name, part] of Object.entries(value))
      list.push(...placesIn(part, [...place, name]));
  return list;
}

/** A mark that stands in a text for JSON that no JavaScript value gives. */
const mark = '\u2603 here \u2603';

/** The JSON of a value in which another JSON text stands at a place. */
function withAt(value, place, json) {
  const whole = { root: structuredClone(value) };
  let at = whole;
  for (const name of ['root', ...place].slice(0, -1)) at = at[name];
  at[['root', ...place].at(-1)] = mark;
  return JSON.stringify(whole.root).replace(JSON.stringify(mark), () => json);
}

const kindOf = (line) => Object.keys(line)[0];
const ofKind = (lines, kind) => lines.flatMap((line, n) => (kindOf(line) === kind ? [n] : []));
const read = (texts) => texts.map((text) => JSON.parse(text));

/** Name of a mutation -> (texts of lines, chance) => [what was done, texts of lines]. */
const mutations = {
  'another value'(texts, chance) {
    const n = 1 + chance.below(texts.length - 1);
    const line = JSON.parse(texts[n]);
    const place = chance.pick(placesIn(line).slice(1));
    const json = chance.pick(values);
    return [`${place.join('/')} of line ${n}: ${json}`, put(texts, n, withAt(line, place, json))];
  },

  'a member more'(texts, chance) {
    const n = 1 + chance.below(texts.length - 1);
    const line = JSON.parse(texts[n]);
    const inside = placesIn(line).filter((place) => {
      const value = place.reduce((part, name) => part[name], line);
      return value !== null && typeof value === 'object' && !Array.isArray(value);
    });
    const place = chance.pick(inside);
    const name = chance.pick(['__proto__', 'constructor', 'toString', 'id', 'new', '', loneHalf]);
    const json = chance.pick(values);
    const text = withAt(line, place, mark).replace(JSON.stringify(mark), () => {
      const value = place.reduce((part, member) => part[member], line);
      const own = JSON.stringify(value).slice(1, -1);
      return `{${own}${own ? ',' : ''}${JSON.stringify(name)}:${json}}`;
    });
    return [`${place.join('/')}/${name} of line ${n}: ${json}`, put(texts, n, text)];
  },

  'a member less'(texts, chance) {
    const n = 1 + chance.below(texts.length - 1);
    const line = JSON.parse(texts[n]);
    const places = placesIn(line).filter((place) => place.length > 1);
    if (!places.length) return mutations.double(texts, chance);
    const place = chance.pick(places);
    const parent = place.slice(0, -1).reduce((part, name) => part[name], line);
    if (Array.isArray(parent)) parent.splice(Number(place.at(-1)), 1);
    else delete parent[place.at(-1)];
    return [`${place.join('/')} of line ${n}`, put(texts, n, JSON.stringify(line))];
  },

  swap(texts, chance) {
    const [a, b] = [1 + chance.below(texts.length - 1), 1 + chance.below(texts.length - 1)];
    return [`lines ${a} and ${b}`, put(put(texts, a, texts[b]), b, texts[a])];
  },

  double(texts, chance) {
    const n = 1 + chance.below(texts.length - 1);
    const to = 1 + chance.below(texts.length - 1);
    return [`line ${n} to ${to}`, texts.toSpliced(to, 0, texts[n])];
  },

  drop(texts, chance) {
    const n = 1 + chance.below(texts.length - 1);
    return [`line ${n}`, texts.toSpliced(n, 1)];
  },

  'another time'(texts, chance) {
    const lines = read(texts);
    const n = chance.pick([...ofKind(lines, 'event'), ...ofKind(lines, 'job')]);
    const kind = kindOf(lines[n]);
    const member = kind === 'job' ? 'started' : 'time';
    const time = JSON.stringify(chance.pick(times));
    return [`${time} in line ${n}`, put(texts, n, withAt(lines[n], [kind, member], time))];
  },

  'another seq'(texts, chance) {
    const lines = read(texts);
    const n = chance.pick(ofKind(lines, 'event'));
    const seq = chance.pick(seqs);
    return [`${seq} in line ${n}`, put(texts, n, withAt(lines[n], ['event', 'seq'], seq))];
  },

  'another id'(texts, chance) {
    const lines = read(texts);
    const events = ofKind(lines, 'event');
    const [n, other] = [chance.pick(events), chance.pick(events)];
    const member = chance.pick(['id', 'job', 'of', 'step', 'kind', 'what']);
    const value = JSON.stringify(lines[other].event[chance.pick(['id', 'job', 'step', 'kind'])]);
    return [
      `${member} ${value} in line ${n}`,
      put(texts, n, withAt(lines[n], ['event', member], value ?? '1')),
    ];
  },

  'another job'(texts, chance) {
    const lines = read(texts);
    const jobs = ofKind(lines, 'job');
    const [n, other] = [chance.pick(jobs), chance.pick(jobs)];
    const member = chance.pick(['id', 'card', 'bench', 'started', 'steps', 'name']);
    const value = JSON.stringify(lines[other].job[member] ?? ['no-such-step', 'identify']);
    return [
      `${member} of line ${other} in ${n}`,
      put(texts, n, withAt(lines[n], ['job', member], value)),
    ];
  },

  'another figure'(texts, chance) {
    const lines = read(texts);
    const n = chance.pick(ofKind(lines, 'job'));
    const numbers = placesIn(lines[n]).filter(
      (place) => typeof place.reduce((part, name) => part[name], lines[n]) === 'number',
    );
    const place = chance.pick(numbers);
    const figure = chance.pick(['0', '1', '7', '-3', '99', '100000']);
    return [
      `${place.join('/')} of line ${n}: ${figure}`,
      put(texts, n, withAt(lines[n], place, figure)),
    ];
  },

  'another event'(texts, chance) {
    const lines = read(texts);
    const n = chance.pick(ofKind(lines, 'event'));
    const { job } = lines[n].event;
    const other = lines[chance.pick(ofKind(lines, 'event'))].event;
    const event = {
      job,
      id: chance.pick([`new-${chance.below(1000)}`, other.id, lines[n].event.id]),
      time: chance.pick([other.time, ...times]),
      kind: chance.pick([
        'undo',
        'choose',
        'finish',
        'done',
        'note',
        'bill',
        'look',
        'wheel',
        'toString',
      ]),
      of: chance.pick([other.id, 'nobody', undefined]),
      step: chance.pick([other.step, 'no-such-step', '__proto__', undefined]),
      text: chance.pick(['short', `cut ${loneHalf}`, undefined]),
      value: chance.pick(['0000000000000000', '12 km', undefined]),
      seq: chance.pick([1, 5, 2 ** 40, undefined]),
    };
    const text = JSON.stringify({ event });
    return [text, texts.toSpliced(n + 1, 0, text)];
  },

  'another kind of line'(texts, chance) {
    const n = 1 + chance.below(texts.length - 1);
    const kind = chance.pick([
      'wheel',
      'beside',
      'aside',
      'bundle',
      '__proto__',
      'end',
      'seal',
      'toString',
    ]);
    const json = chance.pick(values);
    return [`${kind} ${json} at ${n}`, texts.toSpliced(n, 0, `{${JSON.stringify(kind)}:${json}}`)];
  },

  'a long text'(texts, chance) {
    const lines = read(texts);
    const n = chance.pick(ofKind(lines, 'event'));
    const long = chance.pick([5000, 70_000, 150_000]);
    const letter = chance.pick(['a', '\u{1f527}', '"', '\\']);
    const text = JSON.stringify(letter.repeat(long) + loneHalf);
    return [
      `${long} of ${letter} in line ${n}`,
      put(texts, n, withAt(lines[n], ['event', 'text'], text)),
    ];
  },

  'many events'(texts, chance) {
    const lines = read(texts);
    const n = chance.pick(ofKind(lines, 'event'));
    const { job } = lines[n].event;
    const many = Array.from({ length: 60 }, (_, k) =>
      JSON.stringify({ event: { ...lines[n].event, job, id: `many-${k}`, seq: k - 30 } }),
    );
    return [`after line ${n}`, texts.toSpliced(n + 1, 0, ...many)];
  },

  'a setting'(texts, chance) {
    const key = chance.pick([
      'pinned',
      'due',
      'bill',
      'gauge',
      'backup',
      'system',
      'severe',
      '__proto__',
      'new',
    ]);
    const text = `{"setting":{"key":${JSON.stringify(key)},"value":${chance.pick(values)}}}`;
    return [text, texts.toSpliced(1, 0, text)];
  },

  'a bit'(texts, chance) {
    const bytes = Buffer.from(texts.join('\n'));
    const at = chance.below(bytes.length);
    bytes[at] ^= 1 << chance.below(8);
    return [`in byte ${at}`, bytes];
  },

  'a cut'(texts, chance) {
    const bytes = Buffer.from(texts.join('\n'));
    const at = chance.below(bytes.length);
    return [`at byte ${at}`, bytes.subarray(0, at)];
  },
};

const put = (texts, n, text) => texts.with(n, text);

const names = Object.keys(mutations);
const counted = ['setting', 'card', 'job', 'event', 'photo', 'beside', 'aside', 'fact'];

/** Texts of lines with an end that counts them, as far as they can be read. */
function ended(texts) {
  const counts = Object.fromEntries(counted.map((kind) => [`${kind}s`, 0]));
  for (const text of texts.slice(1)) {
    const [, kind] = text.match(/^\{"(\w+)":/) ?? [];
    if (`${kind}s` in counts) counts[`${kind}s`]++;
  }
  return [...texts, JSON.stringify({ end: counts })];
}

/**
 * A backup with one change, or a few: {name, file}. `texts` are its lines but for end
 * and seal; the file has an end that counts what is in it, and a seal that is right.
 *
 * @param {string[]} texts
 * @param {Chance} chance
 */
export async function mutated(texts, chance) {
  const done = [];
  let body = texts;
  for (let left = 1 + chance.below(2); left && Array.isArray(body); left--) {
    const name = chance.pick(names);
    try {
      const [what, after] = mutations[name](body, chance);
      done.push(`${name}: ${what.slice(0, 300)}`);
      body = after;
    } catch (error) {
      // What an earlier change made can't be read: it stays alone.
      if (!(error instanceof SyntaxError || error instanceof TypeError) || !done.length)
        throw error;
    }
  }
  const bytes = Array.isArray(body) ? Buffer.from(ended(body).join('\n')) : endedBytes(body);
  return { name: done.join('; '), file: await sealed(bytes) };
}

/** Bytes with an end that counts their lines. */
const endedBytes = (bytes) => {
  const texts = bytes.toString('latin1').split('\n');
  return Buffer.from(ended(texts).join('\n'), 'latin1');
};

/** A file of these bytes, sealed. */
export async function sealed(bytes) {
  const body = new Blob([bytes, '\n']);
  return new Blob([body, seal(await digestOf(body, body.size), false)]);
}
