import assert from 'node:assert/strict';
import { test } from 'node:test';
import { unavailable } from './answer.js';
import { CoreClient } from './client.js';
import { FakeWorker } from '../../test/fake-worker.js';

const echo = ({ op, input }) => ({ output: `{"ok":["${op}",${input}]}` });
const silence = () => undefined;

/** A client whose n-th worker behaves by the n-th script (the last one for all further). */
function clientOf(...scripts) {
  const workers = [];
  const client = new CoreClient(() => {
    const script = scripts[Math.min(workers.length, scripts.length - 1)];
    const worker = script === null ? new FakeWorker(silence, false) : new FakeWorker(script);
    workers.push(worker);
    return worker;
  });
  const states = [];
  client.onState((state) => states.push(state));
  return { client, workers, states };
}

/** Lets all pending promise work happen. */
const settle = () => new Promise((resolve) => setImmediate(resolve));

test('calls wait until the core is ready, then go out in order, one at a time', async () => {
  const { client, workers, states } = clientOf(null);
  const answers = Promise.all([client.call('a', { n: 1 }), client.call('b')]);
  assert.equal(workers.length, 1);
  assert.equal(workers[0].sent.length, 0);
  workers[0].emit({ ready: true });
  assert.deepEqual(workers[0].sent, [{ id: 1, op: 'a', input: '{"n":1}' }]);
  workers[0].emit({ id: 1, output: '{"ok":1}' });
  workers[0].emit({ id: 2, output: '{"findings":[]}' });
  assert.deepEqual(await answers, [{ ok: 1 }, { findings: [] }]);
  assert.deepEqual(states, ['starting', 'ready']);
});

test('the first start waits for its moment, once', async () => {
  let go;
  let starts = 0;
  const client = new CoreClient(
    () => (starts++, new FakeWorker(echo)),
    (fn) => (go = fn),
  );
  const answer = client.call('a');
  client.start();
  assert.equal(starts, 0);
  go();
  assert.deepEqual(await answer, { ok: ['a', {}] });
  assert.equal(starts, 1);
});

const crashes = {
  'undefined in place of an answer': () => ({ output: undefined }),
  'no JSON': () => ({ output: 'panic' }),
  null: () => ({ output: 'null' }),
  'neither ok nor findings': () => ({ output: '{}' }),
  'ok and findings': () => ({ output: '{"ok":1,"findings":[]}' }),
  'findings that are no list': () => ({ output: '{"findings":{}}' }),
  'an answer to another call': () => ({ id: 99, output: '{"ok":1}' }),
  'an exited program': () => ({ id: undefined, failed: true }),
};

for (const [name, script] of Object.entries(crashes)) {
  test(`a crash mid-call is mended: ${name}`, async () => {
    const { client, workers, states } = clientOf(script, echo);
    assert.deepEqual(await client.call('a', { n: 1 }), { ok: ['a', { n: 1 }] });
    assert.deepEqual([workers.length, workers[0].terminated], [2, true]);
    assert.deepEqual(states, ['starting', 'ready', 'restarting', 'ready']);
  });
}

test('an error of the worker is a crash', async () => {
  const { client, workers } = clientOf(silence, echo);
  const answer = client.call('a');
  await settle();
  workers[0].onerror({});
  assert.deepEqual(await answer, { ok: ['a', {}] });
});

test('a call that crashes the core twice is given up; the others are answered', async () => {
  const bad = (message) => (message.op === 'bad' ? { failed: true } : echo(message));
  const { client, workers } = clientOf(bad);
  const answers = await Promise.all(['a', 'bad', 'b'].map((op) => client.call(op)));
  assert.deepEqual(answers, [{ ok: ['a', {}] }, unavailable, { ok: ['b', {}] }]);
  assert.equal(workers.length, 3);
});

test('a core that never answers is restarted at the deadline, twice, then given up', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const { client, workers } = clientOf(silence);
  const answer = client.call('a');
  await settle();
  t.mock.timers.tick(59_999);
  assert.equal(workers[0].terminated, false);
  t.mock.timers.tick(1);
  await settle();
  assert.deepEqual([workers[0].terminated, workers[1].sent.length], [true, 1]);
  t.mock.timers.tick(60_000);
  assert.deepEqual(await answer, unavailable);
});

test('a late answer of a terminated worker counts for nothing', async () => {
  const { client, workers } = clientOf(silence, silence);
  const answer = client.call('a');
  await settle();
  const late = workers[0].onmessage;
  workers[0].onerror({});
  await settle();
  late({ data: { id: 1, output: '{"ok":"old"}' } });
  workers[1].emit({ id: 2, output: '{"ok":"new"}' });
  assert.deepEqual(await answer, { ok: 'new' });
});

test('a worker that never starts: one restart, then all calls are refused; the next call tries anew', async (t) => {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const { client, workers, states } = clientOf(null, null, echo);
  const answers = Promise.all([client.call('a'), client.call('b')]);
  t.mock.timers.tick(60_000);
  t.mock.timers.tick(60_000);
  assert.deepEqual(await answers, [unavailable, unavailable]);
  assert.deepEqual(states, ['starting', 'restarting', 'failed']);
  assert.deepEqual(await client.call('c'), { ok: ['c', {}] });
  assert.equal(workers.length, 3);
});

test('a worker that cannot be made is a failed start', async () => {
  const client = new CoreClient(() => {
    throw new TypeError('no workers here');
  });
  assert.deepEqual(await client.call('a'), unavailable);
  assert.equal(client.state, 'failed');
});
