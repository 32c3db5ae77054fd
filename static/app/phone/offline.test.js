import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Offline } from './offline.js';

/** A service worker that says its version when asked, and remembers what it was sent. */
class FakeServiceWorker extends EventTarget {
  told = [];
  constructor(version) {
    super();
    this.version = version;
  }
  postMessage(message, ports = []) {
    this.told.push(message.type);
    ports[0]?.postMessage(this.version);
    ports[0]?.close();
  }
}

function world({ active = null, waiting = null, installing = null } = {}) {
  const registration = Object.assign(new EventTarget(), {
    active,
    waiting,
    installing,
    updates: 0,
  });
  registration.update = async () => void registration.updates++;
  const container = Object.assign(new EventTarget(), {
    controller: active,
    register: async (...given) => ((container.registered = given), registration),
  });
  const page = Object.assign(new EventTarget(), {
    visibilityState: 'visible',
    querySelector: (s) => ({ content: s.includes('version') ? 'v1' : '2026-11-25' }),
  });
  const reloads = [];
  const offline = new Offline(page, container, () => reloads.push(1));
  return { offline, registration, container, page, reloads };
}

/** The next state that satisfies `want`. */
const until = (offline, want) =>
  new Promise((resolve) => offline.subscribe((state) => want(state) && resolve(state)));

/** Resolves after all messages that were posted before. */
function messageRoundTrip() {
  const { port1, port2 } = new MessageChannel();
  port1.postMessage(null);
  return new Promise((resolve) => (port2.onmessage = () => (port2.close(), setImmediate(resolve))));
}

const changeController = (container, worker) => {
  container.controller = worker;
  container.dispatchEvent(new Event('controllerchange'));
};

test('a first visit becomes ready when the install has finished, and does not reload', async () => {
  const installing = new FakeServiceWorker('v1');
  const { offline, registration, container, reloads } = world({ installing });
  await offline.start();
  assert.deepEqual(container.registered, ['/sw.js', { updateViaCache: 'none' }]);
  assert.equal(offline.state.ready, false);
  Object.assign(registration, { installing: null, waiting: installing });
  installing.dispatchEvent(new Event('statechange'));
  assert.deepEqual([offline.state.ready, offline.state.waiting], [false, false]);
  Object.assign(registration, { waiting: null, active: installing });
  installing.dispatchEvent(new Event('statechange'));
  assert.equal(offline.state.ready, true);
  changeController(container, installing);
  await messageRoundTrip();
  assert.deepEqual([offline.state.updatedElsewhere, reloads.length], [false, 0]);
});

test('a version that waits since the last visit is reported at once', async () => {
  const { offline } = world({
    active: new FakeServiceWorker('v1'),
    waiting: new FakeServiceWorker('v2'),
  });
  await offline.start();
  assert.deepEqual([offline.state.ready, offline.state.waiting], [true, true]);
});

test('taking over reloads this tab, once', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const waiting = new FakeServiceWorker('v2');
  const { offline, container, reloads } = world({ active: new FakeServiceWorker('v1'), waiting });
  await offline.start();
  offline.takeOver();
  assert.deepEqual([waiting.told, reloads.length], [['take-over'], 0]);
  changeController(container, waiting);
  changeController(container, waiting);
  t.mock.timers.tick(4000);
  assert.equal(reloads.length, 1);
});

test('taking over ends in a reload, whatever the worker does', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const { offline, reloads } = world({
    active: new FakeServiceWorker('v1'),
    waiting: new FakeServiceWorker('v2'),
  });
  await offline.start();
  offline.takeOver();
  t.mock.timers.tick(3999);
  assert.equal(reloads.length, 0);
  t.mock.timers.tick(1);
  assert.equal(reloads.length, 1);
});

test('nothing waits any more: a plain reload', async () => {
  const { offline, reloads } = world({ active: new FakeServiceWorker('v2') });
  await offline.start();
  offline.takeOver();
  assert.equal(reloads.length, 1);
});

test('another tab changed the version: said, not reloaded', async () => {
  const { offline, container, reloads } = world({ active: new FakeServiceWorker('v1') });
  await offline.start();
  changeController(container, new FakeServiceWorker('v2'));
  await until(offline, (state) => state.updatedElsewhere);
  assert.equal(reloads.length, 0);
});

test('looks for a new version when the page becomes visible', async () => {
  const { offline, page, registration } = world({ active: new FakeServiceWorker('v1') });
  await offline.start();
  page.visibilityState = 'hidden';
  page.dispatchEvent(new Event('visibilitychange'));
  assert.equal(registration.updates, 0);
  page.visibilityState = 'visible';
  page.dispatchEvent(new Event('visibilitychange'));
  assert.equal(registration.updates, 1);
});

test('a browser without service workers, and one that refuses them', async () => {
  const none = new Offline(undefined, undefined, assert.fail);
  await none.start();
  assert.equal(none.state.supported, false);
  const { offline, container } = world();
  container.register = async () => {
    throw new DOMException('no', 'SecurityError');
  };
  await offline.start();
  assert.equal(offline.state.supported, false);
});
