// What lies in a page's store, whatever it is, as JSON; and back. Both run in the page.

/** Takes a copy of the store of that name. */
export async function copyStore(name) {
  const done = (request) =>
    new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  const asURL = (blob) =>
    new Promise((resolve) => {
      const reader = new FileReader();
      reader.onload = () => resolve(reader.result);
      reader.readAsDataURL(blob);
    });
  const plain = async (record) => {
    if (!(record?.blob instanceof Blob)) return record;
    return { ...record, blob: { url: await asURL(record.blob) } };
  };
  const db = await done(indexedDB.open(name));
  const copy = { name, version: db.version, lists: {} };
  for (const list of db.objectStoreNames) {
    const store = db.transaction(list).objectStore(list);
    const [keys, records] = await Promise.all([done(store.getAllKeys()), done(store.getAll())]);
    copy.lists[list] = {
      keyPath: store.keyPath,
      indexes: [...store.indexNames].map((index) => [index, store.index(index).keyPath]),
      keys: store.keyPath === null ? keys : undefined,
      records: await Promise.all(records.map(plain)),
    };
  }
  db.close();
  return copy;
}

/** Puts a copy in place of what is there. */
export async function pasteStore({ name, version, lists }) {
  const done = (request) =>
    new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  const whole = async (record) =>
    record?.blob?.url ? { ...record, blob: await (await fetch(record.blob.url)).blob() } : record;
  await done(indexedDB.deleteDatabase(name));
  const opening = indexedDB.open(name, version);
  opening.onupgradeneeded = () => {
    for (const [list, { keyPath, indexes }] of Object.entries(lists)) {
      const store = opening.result.createObjectStore(list, { keyPath });
      for (const [index, path] of indexes) store.createIndex(index, path);
    }
  };
  const db = await done(opening);
  for (const [list, { keys, records }] of Object.entries(lists)) {
    const ready = await Promise.all(records.map(whole));
    const store = db.transaction(list, 'readwrite').objectStore(list);
    for (const [n, record] of ready.entries()) await done(store.put(record, keys?.[n]));
  }
  db.close();
}
