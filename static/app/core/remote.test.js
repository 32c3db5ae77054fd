import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isUnanswered, unavailable, unreachable } from './answer.js';
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

test('without a network either, it says so, and is asked again at the next call', async (t) => {
  const { mock } = t.mock.method(globalThis, 'fetch', async () => {
    throw new TypeError('no network');
  });
  const client = new CoreClient(remoteWorker);
  for (const count of [1, 2]) {
    const answer = await client.call('a');
    assert.deepEqual(answer, unreachable);
    assert.equal(mock.callCount(), count);
    assert.ok(isUnanswered(answer) && isUnanswered(unavailable) && !isUnanswered({ ok: 7 }));
  }
});
