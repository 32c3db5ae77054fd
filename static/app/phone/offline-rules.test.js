import assert from 'node:assert/strict';
import { test } from 'node:test';
import { agreementName, cacheName, isOurs, namedByContent, versionsIn } from './offline-rules.js';

const origin = 'https://tidysump.example';

const asked = [
  // method, path or URL, whether it is for the service worker
  ['GET', '/', true],
  ['GET', '/?from=icon', true],
  ['GET', '/anything', true],
  ['GET', '/app/main.1.js?x=1', true],
  ['POST', '/', false],
  ['HEAD', '/app/main.1.js', false],
  ['GET', '/api/plan', false],
  ['POST', '/api/plan', false],
  ['GET', 'https://elsewhere.example/app/main.1.js', false],
  ['GET', 'https://elsewhere.example/', false],
];

for (const [method, path, want] of asked) {
  test(`${method} ${path} is ${want ? '' : 'not '}for the service worker`, () => {
    assert.equal(isOurs({ method, url: new URL(path, origin).href }, origin), want);
  });
}

test('versions are told from the agreement and from what is not ours', () => {
  const names = [
    cacheName('a'),
    agreementName,
    cacheName('b'),
    'somebody-else',
    'other-tidysump-a',
  ];
  assert.deepEqual(versionsIn(names), ['a', 'b']);
});

test('a name that holds a hash is known by it', () => {
  for (const [path, want] of [
    ['/app/main.0123456789.js', true],
    ['/core.abcdef0123.wasm', true],
    ['/words/en/first.00000000aa.json', true],
    ['/', false],
    ['/manifest.webmanifest', false],
    ['/card.schema.json', false],
    ['/app/main.012345678.js', false],
    ['/app/main.0123456789', false],
    ['/app/main.012345678g.js', false],
  ])
    assert.equal(namedByContent(path), want, path);
});
