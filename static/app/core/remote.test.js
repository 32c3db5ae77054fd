import assert from 'node:assert/strict';
import { test } from 'node:test';
import { unavailable } from './answer.js';
import { CoreClient } from './client.js';
import { remoteWorker } from './remote.js';

test('without WebAssembly the server answers', async (t) => {
  const asked = [];
  t.mock.method(globalThis, 'fetch', async (url, { method, body }) => {
    asked.push([method, url, body]);
    return new Response('{"ok":7}');
  });
  assert.deepEqual(await new CoreClient(remoteWorker).call('a b', { n: 1 }), { ok: 7 });
  assert.deepEqual(asked, [['POST', '/api/a%20b', '{"n":1}']]);
});

test('without a network either, the call is refused after a second try', async (t) => {
  const { mock } = t.mock.method(globalThis, 'fetch', async () => {
    throw new TypeError('no network');
  });
  assert.deepEqual(await new CoreClient(remoteWorker).call('a'), unavailable);
  assert.equal(mock.callCount(), 2);
});
