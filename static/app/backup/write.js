import { ofThisPhone } from '../store/settings-shapes.js';
import { factsIn } from '../store/facts.js';
import { knowPersons } from '../store/persons.js';
import * as whole from '../store/whole.js';
import { asideOf } from './aside.js';
import { toBase64 } from './base64.js';
import { bounds, isQuoted } from './bounds.js';
import { LeftOut } from './left-out.js';
import { Pace } from './pace.js';
import { Pieces, seal } from './seal.js';
import { refused } from './shapes.js';

/** @import { JobRecord } from '../store/records.d.ts' */

// A backup is JSON Lines, gzipped where the browser can, with a seal; specs/backup.schema.json
// says what stands in it.

/** What a backup of this app says of itself. */
export const format = 'tidysump-backup';
export const version = 3;

const together = 50; // jobs read at once
const pictures = 5;
const block = 64_000; // letters handed on at once

/** A backup's lines under way. */
export class Lines {
  counts = {
    settings: 0,
    cards: 0,
    jobs: 0,
    events: 0,
    photos: 0,
    besides: 0,
    asides: 0,
    facts: 0,
  };
  #made;

  /** @param {string} made */
  constructor(made) {
    this.#made = made;
  }

  get head() {
    return `${JSON.stringify({ format, version, made: this.#made })}\n`;
  }

  get end() {
    return `${JSON.stringify({ end: this.counts })}\n`;
  }

  /** The line of a record; one that is longer than may be read goes as what can't be read. */
  of(kind, value) {
    const line = `{"${kind}":${JSON.stringify(value)}}`;
    const long = line.length > bounds.line && kind !== 'photo' && !isQuoted(line);
    if (long)
      return this.of('aside', asideOf({ kind, text: line, why: tooLong, from: this.#made }));
    this.counts[`${kind}s`]++;
    return `${line}\n`;
  }
}

const tooLong = refused('record-too-long');

/** Lets the screen move between what is made. */
async function* paced(lines) {
  const pace = new Pace();
  for await (const line of lines) {
    yield line;
    if (pace.due) await pace.breathe();
  }
}

/**
 * The lines of jobs, each followed by its events and by what is beside them.
 *
 * @param {JobRecord[]} jobs
 * @param {Lines} lines
 * @param {LeftOut} out
 * @param {(job: string, events: number) => void} [note] is called with how many events of each job are in it
 */
export async function* jobsIn(jobs, lines, out, note = () => {}) {
  const ids = jobs.map(({ id }) => id);
  const [events, beside] = await Promise.all([whole.eventsOf(ids), whole.besideOf(ids)]);
  for (const [n, { summary: _, ...job }] of jobs.entries()) {
    out.job(job.id);
    yield lines.of('job', job);
    const told = out.events(events[n] ?? []);
    for (const event of told) yield lines.of('event', event);
    for (const other of beside[n] ?? []) if (out.beside(other)) yield lines.of('beside', other);
    note(job.id, told.length);
  }
}

/** All lines of a backup; what lies aside comes before the jobs that it may belong to. */
async function* linesOf({ made, photos, persons, progress, note }) {
  const lines = new Lines(made);
  const out = new LeftOut(persons);
  yield lines.head;
  for (const [key, value] of await whole.allSettings())
    if (!ofThisPhone(key) && out.setting(key)) yield lines.of('setting', { key, value });
  for await (const chunk of whole.chunks('cards', 100))
    for (const { key, card, changed, pinned } of chunk)
      yield lines.of('card', { key, card, changed, pinned });
  for await (const chunk of whole.chunks('facts', 500))
    for (const fact of chunk) if (out.fact(fact)) yield lines.of('fact', fact);
  for await (const chunk of whole.chunks('beside', 100))
    for (const fact of chunk.flatMap(factsIn)) if (out.fact(fact)) yield lines.of('fact', fact);
  for await (const chunk of persons ? whole.chunks('aside', 100) : [])
    for (const { kind, text, why, from, time } of chunk)
      yield lines.of('aside', { kind, text, why, from, time });
  for await (const chunk of whole.chunks('jobs', together)) {
    yield* jobsIn(chunk, lines, out, note);
    progress(lines.counts);
  }
  for await (const chunk of photos ? whole.chunks('photos', pictures) : [])
    for (const { job, id, what, blob } of chunk) {
      if (!out.photo(job, id)) continue;
      yield lines.of('photo', { job, id, what, data: await toBase64(blob) });
      progress(lines.counts);
    }
  yield lines.end;
}

/** Texts put together to blocks worth handing on. */
async function* blocks(texts) {
  const encoder = new TextEncoder();
  let open = [];
  let letters = 0;
  for await (const text of texts) {
    open.push(text);
    letters += text.length;
    if (letters < block) continue;
    yield encoder.encode(open.join(''));
    [open, letters] = [[], 0];
  }
  yield encoder.encode(open.join(''));
}

function streamOf(chunks) {
  return new ReadableStream({
    async pull(out) {
      const { value, done } = await chunks.next();
      if (done) out.close();
      else out.enqueue(value);
    },
    cancel: () => chunks.return(),
  });
}

/**
 * Makes a backup of the whole store: a Blob. It is gzipped unless `plain`, and where the
 * browser can't.
 *
 * @param {object} how
 * @param {string} how.made
 * @param {boolean} how.photos
 * @param {boolean} [how.persons] whether it may hold what tells of persons
 * @param {boolean} [how.plain]
 * @param {(counts: Lines['counts']) => void} [how.progress] is called with what is in it so far
 * @param {(job: string, events: number) => void} [how.note] is called with how many events of each job are in it
 */
export async function makeBackup({
  made,
  photos,
  persons = true,
  plain = false,
  progress = () => {},
  note = () => {},
}) {
  const zipped = !plain && Boolean(globalThis.CompressionStream);
  if (!persons) await knowPersons();
  return sealed(linesOf({ made, photos, persons, progress, note }), zipped);
}

/**
 * A Blob of these lines, gzipped or not, with its seal.
 *
 * @param {AsyncIterable<string>} lines
 * @param {boolean} zipped
 */
export async function sealed(lines, zipped) {
  const text = streamOf(blocks(paced(lines)));
  const stream = zipped ? text.pipeThrough(new CompressionStream('gzip')) : text;
  const pieces = new Pieces();
  const reader = stream.getReader();
  for (;;) {
    const { value, done } = await reader.read();
    if (done) break;
    await pieces.add(value);
  }
  const digest = await pieces.end();
  const type = zipped ? 'application/gzip' : 'text/plain';
  return new Blob([...pieces.parts, seal(digest, zipped)], { type });
}
