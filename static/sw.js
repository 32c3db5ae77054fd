/* global __VERSION__, __PRECACHE__ */
// The service worker: keeps the whole program as one set of files and answers
// from that set only. It stores nothing at run time.
import { cacheName, keptPath, staleCaches } from './app/phone/offline-rules.js';

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const version = __VERSION__;
const kept = new Set(__PRECACHE__);

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
