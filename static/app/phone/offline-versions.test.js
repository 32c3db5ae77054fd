import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { test } from 'node:test';
import fc from 'fast-check';
import { agreementName, cacheName } from './offline-rules.js';
import { Versions } from './offline-versions.js';

const origin = 'https://tidysump.example';

/** The caches of a phone: what a service worker asks of them. */
class FakeCaches {
  all = new Map();
  has = async (name) => this.all.has(name);
  keys = async () => [...this.all.keys()];
  delete = async (name) => this.all.delete(name);
  async open(name) {
    if (!this.all.has(name)) this.all.set(name, new Map());
    const entries = this.all.get(name);
    return {
      match: async (path) => entries.get(path)?.clone(),
      put: async (path, response) => {
        if (this.full) throw new DOMException('planted', 'QuotaExceededError');
        entries.set(path, response);
      },
      keys: async () => [...entries.keys()],
    };
  }
  /** What lies in the cache of a version: {path: text}. */
  async texts(version) {
    const entries = [...(this.all.get(cacheName(version)) ?? [])];
    const read = entries.map(async ([path, response]) => [path, await response.clone().text()]);
    return Object.fromEntries(await Promise.all(read));
  }
}

const sum = (text) => createHash('sha256').update(text).digest('hex');
const named = (name, text, ext) => `/${name}.${sum(text).slice(0, 10)}.${ext}`;

/** The files of a made-up version: some named by what they hold, some not, one the same in all. */
function filesOf(version) {
  const script = `script of ${version}`;
  const later = `later part of ${version}`;
  return {
    '/': `page of ${version}`,
    '/manifest.webmanifest': `manifest of ${version}`,
    [named('app/main', script, 'js')]: script,
    [named('app/later', later, 'js')]: later,
    [named('core', 'the same core', 'wasm')]: 'the same core',
  };
}

const pathOf = (version, name) =>
  Object.keys(filesOf(version)).find((path) => path.startsWith(`/${name}.`));

/** A host and a phone; `versions(v)` is the worker of that version on the phone. */
function world() {
  const host = { files: {}, asked: [] };
  const caches = new FakeCaches();
  const fetch = async (request) => {
    const path = request.url ? new URL(request.url).pathname : request;
    host.asked.push(path);
    if (host.down) throw new TypeError('Failed to fetch');
    const text = host.files[path];
    return new Response(text ?? 'not found', { status: text === undefined ? 404 : 200 });
  };
  const versions = (version) => {
    const files = Object.entries(filesOf(version)).map(([path, text]) => [path, sum(text)]);
    return new Versions(version, files, caches, fetch);
  };
  const deploy = (version) => (host.files = filesOf(version));
  return { host, caches, versions, deploy };
}

/** Installs a version and lets it become active, as the browser does. */
async function begin({ versions, deploy }, version, first) {
  deploy(version);
  const worker = versions(version);
  await worker.install(first);
  await worker.settle();
  await worker.cleanUp();
  return worker;
}

const get = async (worker, path, mode = 'cors') =>
  (await worker.answer({ url: new URL(path, origin).href, mode })).text();

const whole = async (worker) => {
  const { have, want } = await worker.count();
  return have === want && want === Object.keys(filesOf('a')).length;
};

test('the first version is served, whole, and without a network', async () => {
  const w = world();
  const a = await begin(w, 'a', true);
  w.host.down = true;
  assert.equal(await a.served(), 'a');
  assert.ok(await whole(a));
  for (const [path, text] of Object.entries(filesOf('a'))) assert.equal(await get(a, path), text);
  for (const path of ['/?from=icon', '/anything', '/list'])
    assert.equal(await get(a, path, 'navigate'), 'page of a', path);
  await assert.rejects(get(a, '/app/other.js'), /fetch/);
});

test('a worker that is active without having been asked for serves the version before, until it is', async () => {
  const w = world();
  await begin(w, 'a', true);
  const b = await begin(w, 'b');
  w.host.down = true;
  assert.equal(await b.served(), 'a');
  assert.ok(await whole(b));
  for (const [path, text] of Object.entries(filesOf('a'))) assert.equal(await get(b, path), text);
  assert.equal(await get(b, '/any', 'navigate'), 'page of a');
  await b.agree();
  for (const [path, text] of Object.entries(filesOf('b'))) assert.equal(await get(b, path), text);
  assert.equal(
    await get(w.versions('b'), '/', 'navigate'),
    'page of b',
    'also a worker started anew',
  );
});

test('a window of the version before gets its own later parts, when the host has them no more', async () => {
  const w = world();
  await begin(w, 'a', true);
  const b = await begin(w, 'b');
  await b.agree();
  await b.cleanUp();
  assert.equal(await get(b, pathOf('a', 'app/later')), 'later part of a');
  assert.ok(!w.host.asked.includes(pathOf('b', 'nothing')));
});

test('versions stay that may be in use: agreed, newest, previous; older ones go', async () => {
  const w = world();
  const kept = async () => (await w.caches.keys()).filter((name) => name !== agreementName);
  await begin(w, 'a', true);
  await begin(w, 'b');
  const c = await begin(w, 'c');
  assert.deepEqual(await kept(), ['a', 'c'].map(cacheName), 'nobody was ever at b');
  await c.agree();
  await c.cleanUp();
  assert.deepEqual(await kept(), ['a', 'c'].map(cacheName), 'a window of a may be open');
  const d = await begin(w, 'd');
  assert.deepEqual(await kept(), ['a', 'c', 'd'].map(cacheName));
  await d.agree();
  await d.cleanUp();
  assert.deepEqual(await kept(), ['c', 'd'].map(cacheName));
});

test('after a worker of before agreements its successor takes over, as it always did', async () => {
  const w = world();
  const old = await w.caches.open(cacheName('old'));
  for (const [path, text] of Object.entries(filesOf('old')))
    await old.put(path, new Response(text));
  const a = await begin(w, 'a');
  assert.equal(await a.served(), 'a');
  assert.equal(await get(a, '/', 'navigate'), 'page of a');
  assert.equal(await get(a, pathOf('old', 'app/later')), 'later part of old', 'for its windows');
});

test('the agreed version is gone with its files: the newest is served', async () => {
  const w = world();
  await begin(w, 'a', true);
  const b = await begin(w, 'b');
  await w.caches.delete(cacheName('a'));
  w.host.down = true;
  assert.equal(await get(b, '/', 'navigate'), 'page of b');
  assert.equal(await b.served(), 'b');
  assert.ok(await whole(b));
});

test('going back to a version that was here before', async () => {
  const w = world();
  await begin(w, 'a', true);
  await (await begin(w, 'b')).agree();
  const again = await begin(w, 'a');
  assert.equal(await again.served(), 'b');
  await again.agree();
  assert.equal(await get(again, '/', 'navigate'), 'page of a');
});

// A host half way through a deployment: for each file of the new version it has that
// one, the old one, nothing, or one that was cut off or altered.
const states = {
  new: (path, now) => now[path],
  old: (path, now, before) => before[path],
  missing: () => undefined,
  cut: (path, now) => now[path].slice(0, -1),
  empty: () => '',
  altered: (path, now) => now[path].toUpperCase(),
  another: () => '<!doctype html><title>Not found</title>',
};

/** Tries to install b over a from a host where the files stand as told; then nothing has changed. */
async function refused(standing) {
  const w = world();
  const a = await begin(w, 'a', true);
  const now = filesOf('b');
  const input = JSON.stringify(standing);
  w.host.files = {};
  for (const [path, state] of Object.entries(standing)) {
    const text = states[state](path, now, filesOf('a'));
    if (text !== undefined) w.host.files[path] = text;
  }
  const had = await w.caches.texts('a');
  await assert.rejects(w.versions('b').install(), undefined, input);
  assert.deepEqual(await w.caches.texts('a'), had, input);
  assert.deepEqual(await w.caches.texts('b'), {}, input);
  w.host.down = true;
  assert.ok(await whole(a), input);
  assert.equal(await get(a, '/', 'navigate'), 'page of a', input);
}

const changed = Object.keys(filesOf('b')).filter((path) => filesOf('a')[path] === undefined);
const shared = ['/', '/manifest.webmanifest'];

test('each file in turn old, missing, cut, or altered: the install refuses, the version before stays whole', async () => {
  for (const path of [...changed, ...shared])
    for (const state of Object.keys(states)) {
      const oldIsMissing = state === 'old' && changed.includes(path);
      if (state === 'new' || oldIsMissing) continue;
      const standing = Object.fromEntries(Object.keys(filesOf('b')).map((p) => [p, 'new']));
      await refused({ ...standing, [path]: state });
    }
});

test('any mixture is refused', async () => {
  const paths = [...changed, ...shared];
  const standing = fc.record(
    Object.fromEntries(paths.map((path) => [path, fc.constantFrom(...Object.keys(states))])),
  );
  await fc.assert(
    fc.asyncProperty(standing, async (files) => {
      fc.pre(Object.values(files).some((state) => state !== 'new'));
      await refused({ ...files, [named('core', 'the same core', 'wasm')]: 'missing' });
    }),
    { numRuns: 200 },
  );
});

test('what did not change is not fetched again', async () => {
  const w = world();
  await begin(w, 'a', true);
  w.host.asked.length = 0;
  await begin(w, 'b');
  assert.deepEqual(w.host.asked.sort(), [...changed, ...shared].sort());
});

test('a copy on the way that was spoilt is passed by', async () => {
  const files = filesOf('a');
  const asked = [];
  const fetch = async (path, { cache }) => {
    asked.push(cache);
    return new Response(cache === 'reload' ? files[path] : 'spoilt');
  };
  const list = Object.entries(files).map(([path, text]) => [path, sum(text)]);
  const caches = new FakeCaches();
  await new Versions('a', list, caches, fetch).install(true);
  assert.ok(asked.includes('reload'));
  const { '/': page } = await caches.texts('a');
  assert.equal(page, 'page of a');
});

test('a connection that broke is made once more for each file, and no oftener', async () => {
  const files = filesOf('a');
  const list = Object.entries(files).map(([path, text]) => [path, sum(text)]);
  for (const [breaks, comes] of [
    [1, true],
    [2, false],
  ]) {
    const asked = Object.fromEntries(Object.keys(files).map((path) => [path, 0]));
    const fetch = async (path) => {
      if (++asked[path] <= breaks) throw new TypeError('Failed to fetch');
      return new Response(files[path]);
    };
    const caches = new FakeCaches();
    const install = new Versions('a', list, caches, fetch).install(true);
    if (comes) await install;
    else await assert.rejects(install, { message: 'Failed to fetch' });
    assert.deepEqual(Object.values(asked), Array(list.length).fill(2));
    assert.equal((await caches.texts('a'))['/'], comes ? 'page of a' : undefined);
  }
});

test('a full phone keeps the version before, and no half of the new one', async () => {
  const w = world();
  const a = await begin(w, 'a', true);
  w.deploy('b');
  w.caches.full = true;
  await assert.rejects(w.versions('b').install(), { name: 'QuotaExceededError' });
  assert.deepEqual(await w.caches.texts('b'), {});
  assert.ok(await whole(a));
});

test('whatever the browser dropped is counted, and fetched anew as far as the host has it', async () => {
  const paths = Object.keys(filesOf('a'));
  await fc.assert(
    fc.asyncProperty(fc.subarray(paths, { minLength: 1 }), fc.boolean(), async (dropped, later) => {
      const w = world();
      let worker = await begin(w, 'a', true);
      if (later) worker = await begin(w, 'b'); // still serves a
      for (const path of dropped) w.caches.all.get(cacheName('a')).delete(path);
      const input = JSON.stringify({ dropped, later });
      const elsewhere = later
        ? dropped.filter((path) => filesOf('b')[path] && /core/.test(path))
        : [];
      const missing = dropped.length - elsewhere.length;
      assert.deepEqual(
        await worker.count(),
        { have: paths.length - missing, want: paths.length },
        input,
      );
      w.host.down = true;
      await worker.mend();
      assert.equal((await worker.count()).have, paths.length - missing, `no network: ${input}`);
      w.host.down = false;
      w.host.files = { ...filesOf('a'), [dropped[0]]: 'of another version' };
      await worker.mend();
      const spoilt = elsewhere.includes(dropped[0]) ? 0 : 1;
      assert.equal((await worker.count()).have, paths.length - spoilt, `another file: ${input}`);
      w.deploy('a');
      await worker.mend();
      assert.ok(await whole(worker), input);
      w.host.down = true;
      for (const [path, text] of Object.entries(filesOf('a')))
        assert.equal(await get(worker, path), text, `${path} ${input}`);
    }),
    { numRuns: 60 },
  );
});
