import assert from 'node:assert/strict';
import { test } from 'node:test';
import { route } from './address.js';
import { addressWith, withAddress } from './address-with.js';

// Texts that an address has signs of its own for.
const odd = ['a/b#c', '100 %', 'x=1&y=2', '1 + 1?', '{"a":1}', 'Ödland', '0'];

test('what goes with an address is read back the same', () => {
  for (const one of odd) {
    const values = { name: one, list: odd, none: undefined, empty: '', no: false, yes: true };
    const to = addressWith(['bench', 'oil/x'], values);
    const [screen, op, rest] = route(to);
    assert.deepEqual([screen, op], ['bench', 'oil/x']);
    assert.deepEqual(
      [...withAddress(rest)],
      [
        ['name', [one]],
        ['list', odd],
        ['no', ['false']],
        ['yes', ['true']],
      ],
    );
  }
  assert.equal(addressWith(['aid'], { job: undefined }), '#/aid', 'nothing goes with it');
});

test('what an earlier version wrote as JSON is still read, and what is none is nothing', () => {
  const read = (part) => Object.fromEntries(withAddress(part));
  assert.deepEqual(
    read('{"answers":{"tyre":"yes"},"hand":["oil","wash"],"job":"7","step":null,"keep":true}'),
    { tyre: ['yes'], hand: ['oil', 'wash'], job: ['7'], step: [''], keep: ['true'] },
  );
  for (const none of [undefined, '', '7', 'null', 'no JSON', '{', '?', '[]'])
    assert.deepEqual([...withAddress(none)], [], `${none}`);
});
