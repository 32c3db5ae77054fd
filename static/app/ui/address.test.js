import assert from 'node:assert/strict';
import { test } from 'node:test';
import { address, go, route } from './address.js';

const routes = [
  // address, its parts
  ['', []],
  ['#', []],
  ['#/', []],
  ['#/bikes', ['bikes']],
  ['#bikes', ['bikes']],
  ['#//job//7/', ['job', '7']],
  ['#/job/a%2Fb/step', ['job', 'a/b', 'step']],
  ['#/bike/%E0%A4%A', ['bike', '%E0%A4%A']],
  ['#/aid/burn?job=7&step=a', ['aid', 'burn', '?job=7&step=a']],
  ['#/trouble?why=a?b', ['trouble', '?why=a?b']],
];

for (const [hash, parts] of routes) {
  test(`"${hash}" is read`, () => assert.deepEqual(route(hash), parts));
}

test('what is made an address is read back the same', () => {
  for (const parts of [
    ['job', 'a/b#c', '100 %'],
    ['bike', 'Ödland?'],
    ['x', '..'],
  ]) {
    assert.deepEqual(route(address(...parts)), parts);
  }
});

test('going somewhere changes the address, which is read when none is given', (t) => {
  globalThis.location = { hash: '' };
  t.after(() => delete globalThis.location);
  go('job', '7', 'steps');
  assert.equal(globalThis.location.hash, '#/job/7/steps');
  assert.deepEqual(route(), ['job', '7', 'steps']);
});
