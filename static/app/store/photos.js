import { ofJob, use, write } from './database.js';

/** @import { Picture } from './records.d.ts' */

// The pictures of jobs: {job, id, what, blob, bytes}, id being that of the event
// that says a picture was taken. The event outlives its picture.

const together = 200; // read at once: they are handles, the pictures stay on the disk

/**
 * The pictures of a job.
 *
 * @param {string} job
 */
export const photosOf = (job) => use((db) => db.getAll('photos', ofJob(job)));

/**
 * Deletes one picture.
 *
 * @param {string} job
 * @param {string} id
 */
export const deletePhoto = (job, id) =>
  write(['photos'], (tx) => tx.objectStore('photos').delete([job, id]));

/**
 * Deletes all pictures of a job, also those that were taken back.
 *
 * @param {string} job
 */
export const deletePhotosOf = (job) =>
  write(['photos'], (tx) => tx.objectStore('photos').delete(ofJob(job)));

/**
 * Calls see(photo) for every picture, in the order of their jobs.
 *
 * @param {(photo: Picture) => unknown} see
 */
export async function eachPhoto(see) {
  /** @type {[job: string, id: string] | null} */
  let last = null;
  for (;;) {
    /** @type {IDBKeyRange | null} */
    const range = last && IDBKeyRange.lowerBound(last, true);
    /** @type {Picture[]} */
    const chunk = await use((db) => db.getAll('photos', range, together));
    for (const photo of chunk) await see(photo);
    const end = chunk.at(-1);
    if (!end || chunk.length < together) return;
    last = [end.job, end.id];
  }
}

/**
 * What the pictures of each job take: Map of job id -> {count, bytes}.
 *
 * @returns {Promise<Map<string, { count: number, bytes: number }>>}
 */
export async function photoRoom() {
  const room = new Map();
  await eachPhoto(({ job, bytes }) => {
    const { count, bytes: before } = room.get(job) ?? { count: 0, bytes: 0 };
    room.set(job, { count: count + 1, bytes: before + bytes });
  });
  return room;
}
