// What lies in the store of a page, in the words of the ledger.

/** Runs in the page: all records of these lists, as far as the store has them. */
const read = (lists) =>
  new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const db = opening.result;
      const here = lists.filter((list) => db.objectStoreNames.contains(list));
      if (!here.length) return (db.close(), resolve({}));
      const tx = db.transaction(here);
      const found = {};
      for (const list of here)
        tx.objectStore(list).getAll().onsuccess = ({ target }) => (found[list] = target.result);
      tx.oncomplete = () => {
        db.close();
        for (const photo of found.photos ?? []) photo.blob = photo.blob.size;
        resolve(found);
      };
      tx.onabort = () => reject(tx.error);
    };
  });

const told = {
  note: ({ text }) => text,
  reading: ({ value }) => value,
  done: ({ step }) => step,
};

/** The entry that an event of a job is. */
const entryOf = ({ job, kind, ...event }) => `${kind} ${job} ${told[kind]?.(event) ?? ''}`;

/** What lies in the page's store: {jobs, events, photos}, an event with the id of its job. */
async function storeOf(page) {
  const lists = ['jobs', 'events', 'bundles', 'photos'];
  const { jobs = [], events = [], bundles = [], photos = [] } = await page.evaluate(read, lists);
  const came = bundles.flatMap(({ job, events: list }) => list.map((event) => ({ ...event, job })));
  return { jobs, events: [...events, ...came], photos };
}

/** The notes of a job that were not taken back. */
export async function notesOf(page, job) {
  const events = (await storeOf(page)).events.filter((event) => event.job === job);
  const undone = new Set(events.filter(({ kind }) => kind === 'undo').map(({ of }) => of));
  return events
    .filter(({ kind, id }) => kind === 'note' && !undone.has(id))
    .map(({ text }) => text);
}

/**
 * The entries that the page's store holds: its jobs, their events, the pictures. Of
 * a job that came in by a restore, which has `whole` events, there is one entry; one of
 * which only a part is there is an entry that nobody made.
 */
export async function entriesIn(page, whole) {
  const { jobs, events, photos } = await storeOf(page);
  const restored = (id) => id.startsWith('restored-');
  const count = (id) => events.filter(({ job }) => job === id).length;
  return [
    ...jobs.map(({ id }) => {
      if (!restored(id)) return 'job';
      return count(id) === whole ? `restored ${id}` : `part of ${id}: ${count(id)} events`;
    }),
    ...events.filter(({ job }) => !restored(job)).map(entryOf),
    ...photos.map(({ job, blob }) => (blob > 0 ? `picture ${job}` : `empty picture ${job}`)),
  ];
}
