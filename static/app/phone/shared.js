import { newId } from '../site/new-id.js';

// A text or text files that another app shares with this one (Web Share Target). The
// service worker takes them, since the page that they are for isn't there yet, and lays
// them into a cache that belongs to no version; the page takes them out.

const name = 'shared-with-tidysump';

/**
 * Lays down what is shared, in the order in which it came.
 *
 * @param {Request} request
 * @param {CacheStorage} caches
 */
export async function keepShared(request, caches) {
  const form = await request.formData();
  const text = form.get('text');
  const pages = [text, ...form.getAll('pages')].filter((page) => page);
  const cache = await caches.open(name);
  for (const page of pages) await cache.put(`/shared/${newId()}`, new Response(page));
}

/**
 * Hands over what was shared and is not taken yet: the pieces, as they came. They go once
 * take() has kept them, so that a page that ends before finds them again.
 *
 * @param {CacheStorage | undefined} caches nothing over plain HTTP
 * @param {(pages: Blob[]) => Promise<unknown>} take
 */
export async function takeShared(caches, take) {
  const cache = (await caches?.has(name)) ? await caches?.open(name) : undefined;
  const keys = (await cache?.keys()) ?? [];
  const found = await Promise.all(keys.map((key) => cache?.match(key)));
  await take(await Promise.all(found.flatMap((one) => one?.blob() ?? [])));
  for (const key of keys) await cache?.delete(key);
}
