import { besideOf, factsIn, factsOf } from '../store/facts.js';
import { logOf } from '../store/of-bike.js';
import { knowPersons } from '../store/persons.js';
import { photosOf } from '../store/photos.js';
import * as store from '../store/store.js';
import * as whole from '../store/whole.js';
import { toBase64 } from './base64.js';
import { LeftOut } from './left-out.js';
import { jobsIn, Lines, sealed } from './write.js';

const together = 50; // jobs read at once

/**
 * All lines of a backup that holds one bike: its card where that is an own one, what is told of
 * it and of those that were joined with it, its jobs with their visits, and their pictures.
 */
async function* linesOf(
  /** @type {string} */ id,
  /** @type {boolean} */ persons,
  /** @type {boolean} */ photos,
) {
  const lines = new Lines(new Date().toISOString());
  const out = new LeftOut(persons);
  yield lines.head;
  const rows = await store.bikeRows();
  const root = rows.find((row) => row.id === id)?.into ?? id;
  const bikes = new Set([root, ...rows.flatMap((row) => (row.into === root ? [row.id] : []))]);
  const follows = new Set(rows.flatMap((row) => (bikes.has(row.id) ? [row.card] : [])).concat(id));
  for (const { key, bike } of await store.lines()) {
    const own = follows.has(bike.id) || follows.has(key) ? await store.card(key) : undefined;
    if (own) yield lines.of('card', { key, card: own.card, changed: own.changed });
  }
  const jobs = (await logOf(root)).map((line) => line.id);
  for (const [book, of] of [
    ...[...bikes].map((bike) => /** @type {const} */ (['bike', bike])),
    ...jobs.map((job) => /** @type {const} */ (['visit', job])),
  ]) {
    const others = (await whole.besideOf([besideOf(book, of)])).flat().flatMap(factsIn);
    for (const fact of [...(await factsOf(book, of)), ...others])
      if (out.fact(fact)) yield lines.of('fact', fact);
  }
  for (let from = 0; from < jobs.length; from += together) {
    const records = await whole.recordsOf('jobs', jobs.slice(from, from + together));
    yield* jobsIn(
      records.flatMap((record) => record ?? []),
      lines,
      out,
    );
  }
  for (const of of photos ? [...bikes, ...jobs] : [])
    for (const { job, id: picture, what, blob } of await photosOf(of))
      if (out.photo(job, picture))
        yield lines.of('photo', { job, id: picture, what, data: await toBase64(blob) });
  yield lines.end;
}

/**
 * One bike with its record as a backup that another phone restores: a Blob.
 *
 * @param {string} id
 * @param {{ persons: boolean, plain: boolean, photos?: boolean }} how
 */
export async function bikeFile(id, { persons, plain, photos = true }) {
  if (!persons) await knowPersons();
  return sealed(linesOf(id, persons, photos), !plain && Boolean(globalThis.CompressionStream));
}
