import assert from 'node:assert/strict';
import { test } from 'node:test';
import { newId } from './new-id.js';

const version4 = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

test('ids are UUIDs of version 4, also where the browser makes none', () => {
  const ids = new Set();
  for (const own of [true, false]) {
    if (!own) Object.defineProperty(crypto, 'randomUUID', { value: undefined, configurable: true });
    for (let n = 0; n < 1000; n++) {
      const id = newId();
      assert.match(id, version4, `randomUUID: ${own}`);
      ids.add(id);
    }
  }
  delete crypto.randomUUID;
  assert.equal(ids.size, 2000, 'each is another');
});
