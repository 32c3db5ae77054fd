/* global __VERSION__, __PRECACHE__ */
// The service worker of the releases that knew no agreement, which phones still have:
// to test the way from it to the present one.

const prefix = 'tidysump-';

/**
 * The name of the one cache of a version.
 *
 * @param {string} version
 */
const cacheName = (version) => prefix + version;

/**
 * Which of the origin's caches are ours and of another version.
 *
 * @param {string[]} names
 * @param {string} version
 */
const staleCaches = (names, version) =>
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
function keptPath({ method, mode, url }, origin, kept) {
  const { origin: from, pathname } = new URL(url);
  if (method !== 'GET' || from !== origin || pathname.startsWith('/api/')) return null;
  if (kept.has(pathname)) return pathname;
  return mode === 'navigate' ? '/' : null;
}
const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const version = __VERSION__;
const kept = new Set(__PRECACHE__.map(([path]) => path));

worker.addEventListener('install', (event) => event.waitUntil(install()));
worker.addEventListener('activate', (event) => event.waitUntil(activate()));

worker.addEventListener('fetch', (event) => {
  const path = keptPath(event.request, location.origin, kept);
  if (path !== null) event.respondWith(answer(path, event.request));
});

// A notice is shown while the app is open: a tap brings it to the front.
worker.addEventListener('notificationclick', (event) => {
  event.notification.close();
  event.waitUntil(worker.clients.matchAll({ type: 'window' }).then(([page]) => page?.focus()));
});

worker.addEventListener('message', ({ data, ports }) => {
  if (data?.type === 'take-over') worker.skipWaiting();
  if (data?.type === 'version') ports[0]?.postMessage(version);
});

// All files or none: addAll writes nothing if one of them is not ok, the install
// fails and the version before stays in charge.
async function install() {
  const cache = await caches.open(cacheName(version));
  try {
    await cache.addAll([...kept].map((path) => new Request(path, { cache: 'no-cache' })));
  } catch (error) {
    if ((await cache.keys()).length === 0) await caches.delete(cacheName(version));
    throw error;
  }
}

// Claiming lets the first visit go offline without a reload. It can't mix
// versions: a page asks for its own files by names that hold their hashes, so
// this worker has exactly that file or lets the request through to the network.
// A page of another version learns of the claim by controllerchange and says so.
async function activate() {
  const names = staleCaches(await caches.keys(), version);
  await Promise.all(names.map((name) => caches.delete(name)));
  await worker.clients.claim();
}

/**
 * @param {string} path
 * @param {Request} request
 */
async function answer(path, request) {
  const cache = await caches.open(cacheName(version));
  return (await cache.match(path, { ignoreVary: true })) ?? fetch(request);
}
