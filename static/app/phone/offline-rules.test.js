import assert from 'node:assert/strict';
import { test } from 'node:test';
import { cacheName, keptPath, staleCaches } from './offline-rules.js';

const origin = 'https://tidysump.example';
const kept = new Set(['/', '/app/main.1.js', '/manifest.webmanifest']);

const asked = [
  // method, mode, path or URL, answered with
  ['GET', 'navigate', '/', '/'],
  ['GET', 'navigate', '/?from=icon', '/'],
  ['GET', 'navigate', '/anything', '/'],
  ['GET', 'navigate', '/app/main.1.js', '/app/main.1.js'], // a licence text is opened like this
  ['GET', 'navigate', '/api/plan', null],
  ['POST', 'navigate', '/', null],
  ['GET', 'no-cors', '/app/main.1.js', '/app/main.1.js'],
  ['GET', 'cors', '/app/main.1.js?x=1', '/app/main.1.js'],
  ['GET', 'cors', '/app/main.2.js', null],
  ['HEAD', 'cors', '/app/main.1.js', null],
  ['POST', 'cors', '/api/plan', null],
  ['GET', 'cors', '/healthz', null],
  ['GET', 'cors', 'https://elsewhere.example/app/main.1.js', null],
  ['GET', 'navigate', 'https://elsewhere.example/', null],
];

for (const [method, mode, path, want] of asked) {
  test(`${method} ${path} (${mode}) -> ${want ?? 'the network'}`, () => {
    const url = new URL(path, origin).href;
    assert.equal(keptPath({ method, mode, url }, origin, kept), want);
  });
}

test('only our caches of other versions are stale', () => {
  const names = [cacheName('a'), cacheName('b'), 'somebody-else', 'other-tidysump-a'];
  assert.deepEqual(staleCaches(names, 'b'), [cacheName('a')]);
});
