import assert from 'node:assert/strict';
import { test } from 'node:test';
import { files } from './files.js';
import { scriptURL } from './trusted.js';

test('the service worker is an allowed script, others are not', () => {
  assert.equal(scriptURL('/sw.js'), '/sw.js');
  for (const url of ['/sw.js?x', 'sw.js', 'https://elsewhere.example/sw.js', '/app/main.js']) {
    assert.throws(() => scriptURL(url), TypeError);
  }
});

test('without a build no file has a place', () => assert.deepEqual(files, {}));
