// Reads the store raw, whatever version of the app wrote it, and writes what it holds to a
// file that restoring reads. It imports nothing, since anything may be what is missing.

/** @typedef {(kind: string, value: unknown) => string} Line */

const database = 'tidysump';
const kinds = new Map(
  Object.entries({ settings: 'setting', cards: 'card', aside: 'aside', facts: 'fact' }),
);
// Those that are written with their job, that follow from others, or are this phone's own.
const apart = [
  'jobs',
  'events',
  'bundles',
  'beside',
  'photos',
  'log',
  'lines',
  'saved',
  'drafts',
  'bikes',
];
const together = 100; // records read at once
const piece = 1 << 20; // letters put together, so that no text grows with the store
const chunk = 0x6000; // bytes, divisible by three: base64 in pieces

/**
 * Saves what is here to a file; resolves to which of the page's outcomes it was and what
 * to fill in: 0 saved, 1 nothing is here, 3 saved but for what could not be read.
 *
 * @returns {Promise<[number, { [name: string]: string }]>}
 */
export async function save() {
  const db = await open();
  if (!db) return [1, {}];
  const parts = [];
  let text = '';
  const told = { records: 0, unread: 0 };
  try {
    for await (const line of lines(db, told)) {
      text += line;
      if (text.length < piece) continue;
      parts.push(new Blob([text]));
      text = '';
    }
  } finally {
    db.close();
  }
  if (!told.records && !told.unread) return [1, {}];
  const now = new Date();
  const day = new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString();
  const name = `${database}-rescue-${day.slice(0, 10)}.txt`;
  const href = URL.createObjectURL(new Blob([...parts, text], { type: 'text/plain' }));
  Object.assign(document.createElement('a'), { href, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(href), 60_000);
  return [told.unread ? 3 : 0, { name, count: String(told.records) }];
}

/**
 * The store as it is; undefined when there is none. It must not be made here: the app
 * would take it for one of its own.
 *
 * @returns {Promise<IDBDatabase | undefined>}
 */
const open = () =>
  new Promise((resolve, reject) => {
    const opening = indexedDB.open(database);
    let none = false;
    opening.onupgradeneeded = () => {
      none = true;
      opening.transaction?.abort();
    };
    opening.onerror = () => (none ? resolve(undefined) : reject(opening.error));
    opening.onsuccess = () => {
      const db = opening.result;
      db.onversionchange = () => db.close();
      resolve(db);
    };
  });

/**
 * A backup of the store, version 3, without a seal: all lines of it.
 *
 * @param {IDBDatabase} db
 * @param {{ records: number, unread: number }} told how many records there were
 */
async function* lines(db, told) {
  const here = [...db.objectStoreNames];
  /** @type {Map<string, number>} */
  const counts = new Map();
  /** @type {Line} */
  const line = (kind, value) => {
    told.records++;
    counts.set(`${kind}s`, (counts.get(`${kind}s`) ?? 0) + 1);
    return `{"${kind}":${JSON.stringify(value)}}\n`;
  };
  const all = (/** @type {string} */ store, most = together) =>
    here.includes(store) ? records(db, store, most, told) : [];
  const made = new Date().toISOString();
  yield `${JSON.stringify({ format: 'tidysump-backup', version: 3, made, rescue: true })}\n`;
  for (const store of here.filter((name) => !apart.includes(name)))
    for await (const [key, value] of all(store))
      if (store === 'settings') yield line('setting', { key, value });
      else yield line(kinds.get(store) ?? store, value);
  for await (const [, { kind, text }] of all('beside'))
    if (kind === 'fact') yield line('fact', await read(text).catch(() => void told.unread++));
  const ids = new Set();
  for await (const [id, { summary: _, ...job }] of all('jobs')) {
    ids.add(id);
    yield line('job', job);
    yield* ofJob(db, here, id, line, told);
  }
  for await (const [[id], event] of all('events')) if (!ids.has(id)) yield line('event', event);
  for await (const [, { blob, ...photo }] of all('photos', 5)) {
    const data = await base64(blob).catch(() => void told.unread++);
    if (data !== undefined)
      yield line('photo', { job: photo.job, id: photo.id, what: photo.what, data });
  }
  yield `${JSON.stringify({ end: Object.fromEntries(counts) })}\n`;
}

/**
 * What belongs to a job stands after it: events that came in as a whole, events that
 * happened here, other contents.
 *
 * @param {IDBDatabase} db
 * @param {string[]} here
 * @param {any} id
 * @param {Line} line
 * @param {{ unread: number }} told
 */
async function* ofJob(db, here, id, line, told) {
  const within = IDBKeyRange.bound([id], [id, []]);
  const ask = (/** @type {string} */ store, /** @type {any} */ range) =>
    here.includes(store)
      ? answer(list(db, store).getAll(range)).catch(() => (told.unread++, []))
      : [];
  for (const { events = [] } of await ask('bundles', id))
    for (const event of events) yield line('event', { ...event, job: id });
  for (const event of await ask('events', within)) yield line('event', event);
  for (const beside of await ask('beside', within)) yield line('beside', beside);
}

/**
 * The records of a list, [key, value]; those that can't be read are counted.
 *
 * @param {IDBDatabase} db
 * @param {string} store
 * @param {number} most at once
 * @param {{ unread: number }} told
 * @returns {AsyncGenerator<[any, any]>}
 */
async function* records(db, store, most, told) {
  /** @type {IDBKeyRange | null} */
  let range = null;
  for (;;) {
    const keys = await answer(list(db, store).getAllKeys(range, most));
    const values = await answer(list(db, store).getAll(range, most)).catch(() => null);
    for (const [n, key] of keys.entries()) {
      const value = values?.at(n) ?? (await answer(list(db, store).get(key)).catch(() => null));
      if (value === null) told.unread++;
      else yield [key, value];
    }
    if (keys.length < most) return;
    range = IDBKeyRange.lowerBound(keys.at(-1), true);
  }
}

/** @param {string} text */
const read = async (text) => JSON.parse(text);

/** @type {(db: IDBDatabase, store: string) => IDBObjectStore} */
const list = (db, store) => db.transaction(store).objectStore(store);

/** @type {(request: IDBRequest) => Promise<any>} */
const answer = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

/** @param {Blob} blob */
async function base64(blob) {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (let at = 0; at < bytes.length; at += chunk)
    text += btoa(String.fromCharCode(...bytes.subarray(at, at + chunk)));
  return text;
}
