import assert from 'node:assert/strict';
import { test } from 'node:test';
import { warm } from './warm.js';

/** A core that has so many texts, and what it was asked for. */
function coreOf(count) {
  const asked = [];
  let open = 0;
  const ask = async (op, { language, warm: text }) => {
    assert.equal(++open, 1, 'two at once');
    await new Promise(setImmediate);
    open--;
    asked.push([op, language, text]);
    return { ok: { more: text < count } };
  };
  return { asked, ask };
}

const numbers = ({ asked }) => asked.map(([, , text]) => text);

test('the texts are read one after the other while nothing else is to be read', async () => {
  const core = coreOf(6);
  await warm(core.ask, 'en', () => false);
  assert.deepEqual(core.asked, []);
  await warm(core.ask, 'en', () => core.asked.length < 2);
  assert.deepEqual(core.asked, [
    ['read-page', 'en', 1],
    ['read-page', 'en', 2],
  ]);

  await warm(core.ask, 'en', () => core.asked.length < 3);
  assert.deepEqual(numbers(core), [1, 2, 3], 'goes on where it stopped');

  await warm(core.ask, 'en', () => true);
  assert.deepEqual(numbers(core), [1, 2, 3, 4, 5, 6], 'to the last');

  await warm(core.ask, 'en', () => true);
  assert.equal(core.asked.length, 6, 'and once only');
});
