// A phone in memory: a store of its own, and the page's own code and core at work on it.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { close, use } from '../../app/store/database.js';
import * as store from '../../app/store/store.js';
import * as whole from '../../app/store/whole.js';
import { loadWords } from '../../app/words/catalogue.js';
import { defaultLanguage, entriesOf } from '../catalogue.js';
import { coreInNode } from '../core-in-node.js';
import { FakeWorker } from '../fake-worker.js';

const ask = await coreInNode();
globalThis.document = { visibilityState: 'hidden' };
globalThis.Worker = function () {
  return new FakeWorker(({ op, input }) => ({ output: ask(op, input) }));
};

globalThis.fetch = async () => Response.json(entriesOf(defaultLanguage));
await loadWords(defaultLanguage);

const lists = ['jobs', 'events', 'bundles', 'beside', 'photos', 'cards', 'settings', 'facts'];

/** One of several phones; what is done is done on the one that was taken up last. */
export class MemoryPhone {
  #factory = new IDBFactory();

  /** Takes it up: from here on the page's modules work on its store. */
  async takeUp() {
    await close();
    globalThis.indexedDB = this.#factory;
  }
}

/** The bytes of a picture, as a text. */
const base64 = async (blob) => Buffer.from(await blob.arrayBuffer()).toString('base64');

/**
 * All that the store of the phone in hand holds: {jobs, events, beside, photos, cards,
 * settings, facts}, each a Map of key -> record. An event is with its job; a job without its
 * summary, which follows from its events.
 */
export async function held() {
  const [jobs, rows, bundles, beside, photos, cards, settings, facts] = await use((db) =>
    Promise.all(lists.map((list) => db.getAll(list))),
  );
  const keys = await use((db) => db.getAllKeys('settings'));
  const came = bundles.flatMap(({ job, events }) => events.map((event) => ({ ...event, job })));
  const pictures = await Promise.all(
    photos.map(async (photo) => ({ ...photo, blob: await base64(photo.blob) })),
  );
  const by = (list, keyOf) => new Map(list.map((record) => [keyOf(record), record]));
  return {
    jobs: by(
      jobs.map(({ summary: _, ...job }) => job),
      ({ id }) => id,
    ),
    events: by([...rows, ...came], ({ job, id }) => JSON.stringify([job, id])),
    beside: by(beside, (row) => JSON.stringify([row.job, row.kind, row.id, row.text])),
    photos: by(pictures, ({ job, id }) => JSON.stringify([job, id])),
    cards: by(cards, ({ key }) => key),
    facts: by(facts, ({ book, of, id }) => JSON.stringify([book, of, id])),
    settings: new Map(keys.map((key, n) => [key, settings[n]])),
  };
}

export { store, whole };
