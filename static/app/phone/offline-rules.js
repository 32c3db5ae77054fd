// What the service worker decides, apart from what it does: pure functions.

const prefix = 'tidysump-';

/**
 * The name of the one cache of a version.
 *
 * @param {string} version
 */
export const cacheName = (version) => prefix + version;

/** The name of the cache that says which version the person agreed to; no version is called so. */
export const agreementName = `${prefix}agreed`;

/**
 * The versions that some of the origin's caches belong to.
 *
 * @param {string[]} names of caches
 */
export const versionsIn = (names) =>
  names
    .filter((name) => name.startsWith(prefix) && name !== agreementName)
    .map((name) => name.slice(prefix.length));

/**
 * Whether a request is for the service worker: all of this origin but what the
 * server computes, and what is not a mere asking.
 *
 * @param {{ method: string, url: string }} request
 * @param {string} origin
 */
export function isOurs({ method, url }, origin) {
  const { origin: from, pathname } = new URL(url);
  return method === 'GET' && from === origin && !/^\/(api|plain)\//.test(pathname);
}

/**
 * Whether a request is what another app shares with this one, as the manifest says.
 *
 * @param {{ method: string, url: string }} request
 * @param {string} origin
 */
export function isShared({ method, url }, origin) {
  const { origin: from, pathname } = new URL(url);
  return method === 'POST' && from === origin && pathname === '/share';
}

/**
 * Whether a path says by itself what is behind it, as the build names nearly all
 * files: "/app/main.0a1b2c3d4e.js" is the same in every version that has it.
 *
 * @param {string} path
 */
export const namedByContent = (path) => /\.[0-9a-f]{10}\.[a-z]+$/.test(path);
