import assert from 'node:assert/strict';
import { test } from 'node:test';
import { read } from './aid.js';
import { kinds } from './kinds.js';

test('an address names a card and where one came from; what it says else leads nowhere', () => {
  for (const kind of Object.keys(kinds))
    assert.deepEqual(read([kind]), { kind, lines: kinds[kind], from: {} }, kind);
  for (const text of ['?job=7&step=tray', '{"job":"7","step":"tray"}'])
    assert.deepEqual(read(['burn', text]).from, { job: '7', step: 'tray' }, text);
  for (const text of ['', 'no JSON', 'null', '7', '[]', '?job=&step=a', '{"__proto__":"x"}'])
    assert.deepEqual(read(['burn', text]).from, {}, text);
  for (const kind of ['', 'none', 'constructor', '__proto__', '{"job":"7"}'])
    assert.equal(read([kind]).kind, undefined, kind);
});
