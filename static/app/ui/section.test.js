import assert from 'node:assert/strict';
import { test } from 'node:test';
import { nothing } from 'lit-html';
import { section } from './section.js';

test('a section is there unless something that it hangs on is not', () => {
  assert.notEqual(section('word', 'content'), nothing);
  assert.notEqual(section('word', 'content', 2), nothing);
  for (const filled of [0, '', undefined, null, false])
    assert.equal(section('word', 'content', filled), nothing, String(filled));
});
