import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Offline } from './offline.js';

/** A service worker that says how it stands when asked, and remembers what it was sent. */
class FakeServiceWorker extends EventTarget {
  told = [];
  state = 'activated';
  have = 3;
  constructor(version, served = version) {
    super();
    Object.assign(this, { version, served });
  }
  postMessage({ type }, ports = []) {
    this.told.push(type);
    const { version: newest, served, have } = this;
    ports[0]?.postMessage({ newest, served, have, want: 3 });
    if (have < 3) ports[0]?.postMessage({ newest, served, have: this.mended ?? have, want: 3 });
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

/** A world whose page has begun, and was told how its worker stands. */
async function begun(workers) {
  const all = world(workers);
  await all.offline.start();
  await messageRoundTrip();
  return all;
}

test('a first visit becomes ready when all was counted, and does not reload', async () => {
  const installing = new FakeServiceWorker('v1');
  installing.state = 'installing';
  const { offline, registration, container, reloads } = await begun({ installing });
  assert.deepEqual(container.registered, ['/sw.js', { updateViaCache: 'none' }]);
  assert.equal(offline.state.ready, false);
  Object.assign(registration, { installing: null, waiting: installing });
  Object.assign(installing, { state: 'installed' }).dispatchEvent(new Event('statechange'));
  assert.deepEqual([offline.state.ready, offline.state.waiting], [false, false]);
  Object.assign(registration, { waiting: null, active: installing });
  Object.assign(installing, { state: 'activating' }).dispatchEvent(new Event('statechange'));
  await messageRoundTrip();
  assert.equal(offline.state.ready, false, 'nothing was counted yet');
  Object.assign(installing, { state: 'activated' }).dispatchEvent(new Event('statechange'));
  await messageRoundTrip();
  assert.deepEqual([offline.state.ready, offline.state.have], [true, 3]);
  changeController(container, installing);
  await messageRoundTrip();
  assert.deepEqual([offline.state.updatedElsewhere, reloads.length], [false, 0]);
});

test('a worker that controls the page is counted, though it be called "activating" for ever', async () => {
  const active = Object.assign(new FakeServiceWorker('v1'), { state: 'activating' });
  const { offline } = await begun({ active });
  assert.deepEqual([offline.state.ready, offline.state.have], [true, 3]);
});

test('what the browser dropped is counted, and ready is said when it was fetched anew', async () => {
  const active = Object.assign(new FakeServiceWorker('v1'), { have: 1, mended: 2 });
  const { offline, page } = await begun({ active });
  assert.deepEqual([offline.state.ready, offline.state.have, offline.state.want], [false, 2, 3]);
  active.mended = 3;
  page.dispatchEvent(new Event('visibilitychange'));
  await until(offline, ({ ready }) => ready);
  assert.deepEqual(active.told, ['standing', 'standing']);
  page.dispatchEvent(new Event('visibilitychange'));
  assert.equal(active.told.length, 2, 'what is whole is counted once a start');
});

test('nothing is ready while no worker has counted: one of before never answers', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const active = new FakeServiceWorker('v0');
  active.postMessage = (_, [port]) => port.close();
  const { offline } = await begun({ active });
  assert.deepEqual([offline.state.ready, offline.state.want], [false, 0]);
  const empty = Object.assign(new FakeServiceWorker('v1'), {
    postMessage: (_, [port]) => port.postMessage({ newest: 'v1', served: 'v1', have: 0, want: 0 }),
  });
  assert.equal((await begun({ active: empty })).offline.state.ready, false, 'none of none');
});

test('a version that waits since the last visit is reported at once', async () => {
  const { offline } = await begun({
    active: new FakeServiceWorker('v1'),
    waiting: new FakeServiceWorker('v2'),
  });
  assert.deepEqual([offline.state.ready, offline.state.waiting], [true, true]);
});

test('a version that came to be active without being asked for waits all the same', async () => {
  const active = new FakeServiceWorker('v2', 'v1');
  const { offline, container, reloads } = await begun({ active });
  const { waiting, updatedElsewhere } = offline.state;
  assert.deepEqual([waiting, updatedElsewhere], [true, false]);
  offline.takeOver();
  assert.deepEqual([active.told.at(-1), reloads.length], ['take-over', 0]);
  active.served = 'v2';
  container.dispatchEvent(new MessageEvent('message', { data: { type: 'agreed' } }));
  await messageRoundTrip();
  assert.equal(reloads.length, 1);
});

test('another window agreed to the version that is active: said, not reloaded', async () => {
  const active = new FakeServiceWorker('v2', 'v1');
  const { offline, container, reloads } = await begun({ active });
  active.served = 'v2';
  container.dispatchEvent(new MessageEvent('message', { data: { type: 'agreed' } }));
  await until(offline, (state) => state.updatedElsewhere);
  assert.deepEqual([offline.state.waiting, reloads.length], [false, 0]);
});

test('a page that is ahead of what is served is offered its own version', async () => {
  const { offline } = await begun({ active: new FakeServiceWorker('v1', 'v0') });
  assert.deepEqual([offline.state.waiting, offline.state.updatedElsewhere], [true, false]);
});

test('taking over reloads this tab, once', async (t) => {
  const waiting = new FakeServiceWorker('v2');
  const { offline, container, reloads } = await begun({
    active: new FakeServiceWorker('v1'),
    waiting,
  });
  t.mock.timers.enable({ apis: ['setTimeout'] });
  offline.takeOver();
  assert.deepEqual([waiting.told, reloads.length], [['take-over'], 0]);
  changeController(container, waiting);
  changeController(container, waiting);
  await messageRoundTrip();
  for (let second = 0; second < 60; second++) t.mock.timers.tick(1000);
  assert.equal(reloads.length, 1);
});

test('a worker that was ended before it took over is asked again', async (t) => {
  const waiting = new FakeServiceWorker('v2');
  const { offline, container, reloads } = await begun({
    active: new FakeServiceWorker('v1'),
    waiting,
  });
  t.mock.timers.enable({ apis: ['setTimeout'] });
  offline.takeOver();
  t.mock.timers.tick(5000);
  assert.deepEqual([waiting.told, reloads.length], [['take-over', 'take-over'], 0]);
  changeController(container, waiting);
  assert.equal(reloads.length, 1);
});

test('taking over ends in a reload, whatever the worker does', async (t) => {
  const { offline, reloads } = await begun({
    active: new FakeServiceWorker('v1'),
    waiting: new FakeServiceWorker('v2'),
  });
  t.mock.timers.enable({ apis: ['setTimeout'] });
  offline.takeOver();
  for (let second = 0; second < 19; second++) t.mock.timers.tick(1000);
  assert.equal(reloads.length, 0);
  t.mock.timers.tick(1000);
  assert.equal(reloads.length, 1);
});

test('nothing waits any more: a plain reload', async () => {
  const { offline, reloads } = await begun({ active: new FakeServiceWorker('v2') });
  offline.takeOver();
  assert.equal(reloads.length, 1);
});

test('another tab changed the version: said, not reloaded', async () => {
  const { offline, container, reloads } = await begun({ active: new FakeServiceWorker('v1') });
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

test('a first install that broke off is begun again, later each time, until it is done', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const { offline, container, page } = world();
  let made = 0;
  let current;
  container.register = async () => {
    made++;
    const installing = Object.assign(new FakeServiceWorker('v1'), { state: 'installing' });
    current = Object.assign(new EventTarget(), { installing, waiting: null, active: null });
    current.update = async () => {};
    return current;
  };
  const settle = () => new Promise((resolve) => setImmediate(resolve));
  const breakOff = () => {
    const { installing } = current;
    current.installing = null;
    Object.assign(installing, { state: 'redundant' }).dispatchEvent(new Event('statechange'));
  };
  await offline.start();
  for (const wait of [5000, 10_000, 20_000, 40_000, 80_000, 160_000, 160_000]) {
    breakOff();
    const before = made;
    t.mock.timers.tick(wait - 1);
    await settle();
    assert.equal(made, before, `not before ${wait} ms`);
    t.mock.timers.tick(1);
    await settle();
    assert.equal(made, before + 1, `after ${wait} ms`);
  }
  assert.deepEqual([offline.state.ready, offline.state.supported], [false, true]);
  breakOff();
  page.dispatchEvent(new Event('visibilitychange'));
  await settle();
  assert.equal(made, 9, 'at once when the page is looked at');
  const { installing: active } = current;
  Object.assign(current, { installing: null, active });
  Object.assign(active, { state: 'activated' }).dispatchEvent(new Event('statechange'));
  await until(offline, ({ ready }) => ready);
  t.mock.timers.tick(1_000_000);
  await settle();
  assert.equal(made, 9, 'it is done');
});

test('an install that breaks off without a network is begun again when there is one', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const { offline, registration, container } = world();
  let made = 0;
  container.register = async () => {
    if (++made > 1 && made < 4) throw new TypeError('Failed to fetch');
    if (made === 4) registration.active = container.controller = new FakeServiceWorker('v1');
    return registration;
  };
  const settle = () => new Promise((resolve) => setImmediate(resolve));
  await offline.start();
  for (const wait of [5000, 10_000, 20_000]) {
    assert.deepEqual([offline.state.ready, offline.state.supported], [false, true]);
    t.mock.timers.tick(wait);
    await settle();
  }
  await until(offline, ({ ready }) => ready);
  assert.equal(made, 4);
});

test('a worker that was ended before it could answer is asked again, and not for ever', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const active = new FakeServiceWorker('v1');
  const answer = active.postMessage;
  active.postMessage = ({ type }, [port]) => (port.close(), active.told.push(type));
  const { offline } = world({ active });
  await offline.start();
  assert.equal(offline.state.ready, false);
  for (let n = 0; n < 200; n++) t.mock.timers.tick(5000);
  assert.deepEqual(active.told, Array(6).fill('standing'), 'a worker that never answers');

  const woken = new FakeServiceWorker('v1');
  woken.postMessage = ({ type }, [port]) => {
    port.close();
    woken.told.push(type);
    woken.postMessage = answer;
  };
  const { offline: other } = world({ active: woken });
  const ready = until(other, (state) => state.ready);
  await other.start();
  t.mock.timers.tick(5000);
  await ready;
  assert.equal(woken.told.length, 2);
});

test('a worker that is slow is heard, however late it answers', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const active = new FakeServiceWorker('v1');
  const answer = active.postMessage;
  const asked = [];
  active.postMessage = (...question) => asked.push(question);
  const { offline } = world({ active });
  await offline.start();
  for (let n = 0; n < 200; n++) t.mock.timers.tick(5000);
  assert.equal(offline.state.ready, false);
  for (const question of asked) answer.apply(active, question);
  await until(offline, (state) => state.ready);
});
