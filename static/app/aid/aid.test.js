import assert from 'node:assert/strict';
import { test } from 'node:test';
import { read } from './aid.js';
import { kinds } from './kinds.js';

test('an address names a card and where one came from; what it says else leads nowhere', () => {
  for (const kind of Object.keys(kinds))
    assert.deepEqual(read([kind]), { kind, lines: kinds[kind], from: {} }, kind);
  assert.deepEqual(read(['burn', '{"job":"7","step":"tray"}']).from, { job: '7', step: 'tray' });
  for (const text of ['', 'no JSON', 'null', '7', '[]', '{"job":7,"step":{}}', '{"__proto__":"x"}'])
    assert.deepEqual(read(['burn', text]).from, {}, text);
  for (const kind of ['', 'none', 'constructor', '__proto__', '{"job":"7"}'])
    assert.equal(read([kind]).kind, undefined, kind);
});
