// What the service worker decides, apart from what it does: pure functions.

const prefix = 'tidysump-';

/**
 * The name of the one cache of a version.
 *
 * @param {string} version
 */
export const cacheName = (version) => prefix + version;

/**
 * Which of the origin's caches are ours and of another version.
 *
 * @param {string[]} names
 * @param {string} version
 */
export const staleCaches = (names, version) =>
  names.filter((name) => name.startsWith(prefix) && name !== cacheName(version));

/**
 * The path of the kept file that answers a request, or null if the request is
 * not for the service worker: another origin, anything but GET, the API, or a
 * file of another version.
 *
 * @param {{ method: string, mode: string, url: string }} request
 * @param {string} origin
 * @param {Set<string>} kept paths
 */
export function keptPath({ method, mode, url }, origin, kept) {
  const { origin: from, pathname } = new URL(url);
  if (method !== 'GET' || from !== origin || pathname.startsWith('/api/')) return null;
  if (kept.has(pathname)) return pathname;
  return mode === 'navigate' ? '/' : null;
}
