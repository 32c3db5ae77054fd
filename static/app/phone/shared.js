// A text or text files that another app shares with this one (Web Share Target). The
// service worker takes them, since the page that they are for isn't there yet, and lays
// them into a cache that belongs to no version; the page takes them out.

const name = 'shared-with-tidysump';
const most = 20; // files; a manual's chapter has fewer pages

/**
 * Lays down what is shared, in the order in which it came.
 *
 * @param {Request} request
 * @param {CacheStorage} caches
 */
export async function keepShared(request, caches) {
  const form = await request.formData();
  const text = form.get('text');
  const pages = [text, ...form.getAll('pages')].filter((page) => page).slice(0, most);
  const cache = await caches.open(name);
  const before = (await cache.keys()).length;
  for (const [n, page] of pages.entries())
    await cache.put(`/shared/${before + n}`, new Response(page));
}

/**
 * Takes out what was shared and is not taken yet: the pieces, as they came.
 *
 * @param {CacheStorage | undefined} caches nothing over plain HTTP
 * @returns {Promise<Blob[]>}
 */
export async function takeShared(caches) {
  if (!(await caches?.has(name))) return [];
  const cache = await /** @type {CacheStorage} */ (caches).open(name);
  const pages = [];
  for (const key of await cache.keys()) {
    const page = await cache.match(key);
    if (page) pages.push(await page.blob());
  }
  await /** @type {CacheStorage} */ (caches).delete(name);
  return pages;
}
