import { use, write } from './database.js';

// The pictures of jobs: {job, id, what, blob, bytes}, id being that of the event
// that says a picture was taken. The event outlives its picture.

const together = 200; // read at once: they are handles, the pictures stay on the disk
const ofJob = (id) => IDBKeyRange.bound([id, ''], [id, '\uffff']);

/** The pictures of a job. */
export const photosOf = (job) => use((db) => db.getAll('photos', ofJob(job)));

/** Deletes one picture. */
export const deletePhoto = (job, id) =>
  write(['photos'], (tx) => tx.objectStore('photos').delete([job, id]));

/** Deletes all pictures of a job, also those that were taken back. */
export const deletePhotosOf = (job) =>
  write(['photos'], (tx) => tx.objectStore('photos').delete(ofJob(job)));

/** Calls see(photo) for every picture, in the order of their jobs. */
export async function eachPhoto(see) {
  for (let last = null; ;) {
    const range = last && IDBKeyRange.lowerBound(last, true);
    const chunk = await use((db) => db.getAll('photos', range, together));
    for (const photo of chunk) await see(photo);
    if (chunk.length < together) return;
    last = [chunk.at(-1).job, chunk.at(-1).id];
  }
}

/** What the pictures of each job take: Map of job id -> {count, bytes}. */
export async function photoRoom() {
  const room = new Map();
  await eachPhoto(({ job, bytes }) => {
    const { count, bytes: before } = room.get(job) ?? { count: 0, bytes: 0 };
    room.set(job, { count: count + 1, bytes: before + bytes });
  });
  return room;
}
