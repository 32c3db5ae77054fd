import assert from 'node:assert/strict';
import { test } from 'node:test';
import { own, setOwn } from './own.js';

const everywhere = Object.getOwnPropertyNames(Object.prototype);

test('no table holds what every object has, until it is put there', () => {
  for (const name of everywhere) {
    for (const table of [{}, { a: 1 }, [], 'text', 7, null, undefined])
      assert.equal(own(table, name), undefined, `${name} in ${JSON.stringify(table)}`);
    const table = { a: 1 };
    setOwn(table, name, 'put');
    assert.equal(own(table, name), 'put', name);
    assert.deepEqual(
      [Object.keys(table), Object.getPrototypeOf(table)],
      [['a', name], Object.prototype],
      name,
    );
  }
});

test('what was put there is found, in lists too', () => {
  assert.equal(own({ a: 1 }, 'a'), 1);
  assert.equal(own(['x', 'y'], '1'), 'y');
  assert.equal(own(JSON.parse('{"__proto__": 7}'), '__proto__'), 7);
  assert.deepEqual([own({ a: 1 }, undefined), own({ a: 1 }, 'b')], [undefined, undefined]);
});
