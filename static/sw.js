/* global __VERSION__, __PRECACHE__ */
// The service worker: keeps the whole program as one set of files and answers from
// such sets only. Which version that is, the person decides (app/phone/offline-versions.js).
import { isOurs, isShared } from './app/phone/offline-rules.js';
import { keepShared } from './app/phone/shared.js';
import { Versions } from './app/phone/offline-versions.js';

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const version = __VERSION__;
const versions = new Versions(version, __PRECACHE__, caches, (request, init) =>
  fetch(request, init),
);

worker.addEventListener('install', (event) =>
  event.waitUntil(versions.install(!worker.registration.active)),
);
worker.addEventListener('activate', (event) => event.waitUntil(activate()));

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (isOurs(request, location.origin)) event.respondWith(versions.answer(request));
  else if (isShared(request, location.origin)) event.respondWith(shared(request));
});

/**
 * What another app shares: it is laid down for the page, which is opened where it is taken in.
 *
 * @param {Request} request
 */
async function shared(request) {
  await keepShared(request, caches).catch(() => {}); // the page says that nothing came
  return Response.redirect('/#/manual?shared', 303);
}

// A notice is shown while the app is open: a tap brings it to the front.
worker.addEventListener('notificationclick', (event) => {
  event.notification.close();
  event.waitUntil(worker.clients.matchAll({ type: 'window' }).then(([page]) => page?.focus()));
});

// A page asks for the version that is served ('version', also pages of earlier
// versions), for how it stands ('standing'), or agrees to this worker's ('take-over').
worker.addEventListener('message', (event) => {
  const [port] = event.ports;
  const { type } = event.data ?? {};
  if (type === 'take-over') event.waitUntil(takeOver());
  if (type === 'version') event.waitUntil(versions.served().then((v) => port?.postMessage(v)));
  if (type === 'standing' && port) event.waitUntil(stand(port));
});

// Claiming lets the first visit go offline without a reload. It can't mix versions:
// a page asks for its own files by names that hold their hashes.
async function activate() {
  await versions.settle();
  await cleanUp();
  await worker.clients.claim();
}

// A worker that waits becomes active, which its pages learn by their controller; one that
// is active already tells them.
async function takeOver() {
  await versions.agree();
  if (worker.registration.waiting) return worker.skipWaiting();
  const windows = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
  for (const page of windows) page.postMessage({ type: 'agreed' });
}

/**
 * Tells a page how it stands, and once more when what was missing has been fetched.
 *
 * @param {MessagePort} port
 */
async function stand(port) {
  for (let told = 0; told < 2; told++) {
    const { have, want } = await versions.count();
    port.postMessage({ newest: version, served: await versions.served(), have, want });
    if (have === want || told) break;
    await versions.mend();
  }
  await cleanUp();
}

// Not while another worker is filling a cache.
async function cleanUp() {
  const { installing, waiting } = worker.registration;
  if (!installing && !waiting) await versions.cleanUp();
}
