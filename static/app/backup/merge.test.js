// Two stores become one, over random histories: neither order nor repetition nor
// grouping matters.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { canonical, merged, rules, same } from './merge.js';

const few = (...words) => fc.constantFrom(...words);
const time = few(
  '2026-11-01T10:00:00.000Z',
  '2026-11-02T10:00:00.000Z',
  '2026-11-03T10:00:00.000Z',
);
const content = fc.record({
  make: few('Plainford', 'Ondrake'),
  value: fc.integer({ min: 0, max: 3 }),
});

// Records that a store may hold: few keys, so that they meet, and contents that differ.
const kinds = {
  event: fc.record(
    {
      job: few('a', 'b'),
      id: few('1', '2', '3'),
      kind: few('done', 'note'),
      text: fc.string({ maxLength: 2 }),
    },
    { requiredKeys: ['job', 'id', 'kind'] },
  ),
  job: fc.record({ id: few('a', 'b'), started: time, card: content, summary: content }),
  card: fc.record({ key: few('x', 'y'), card: content, changed: time, pinned: fc.boolean() }),
  photo: fc.record({
    job: few('a', 'b'),
    id: few('1', '2'),
    what: few('plug', 'pan'),
    data: few('AAAA', 'BBBB'),
  }),
};

const keyOf = ({ key, job, id }) => key ?? [job, id].join();
const history = fc.record(
  Object.fromEntries(
    Object.entries(kinds).map(([kind, record]) => [kind, fc.array(record, { maxLength: 8 })]),
  ),
);

/** The store that a history of records leaves; each record meets those before it. */
function storeOf(...histories) {
  const store = new Map();
  for (const list of histories)
    for (const [kind, records] of Object.entries(list))
      for (const record of records) {
        const key = `${kind} ${keyOf(record)}`;
        store.set(key, merged(kind, store.get(key), record));
      }
  return store;
}

const recordsOf = (store) => {
  const list = Object.fromEntries(Object.keys(kinds).map((kind) => [kind, []]));
  for (const [key, record] of store) list[key.split(' ')[0]].push(record);
  return list;
};

const union = (...stores) => storeOf(...stores.map(recordsOf));

/** A store as text; the summary of a job is a cache. */
const textOf = (store) =>
  [...store]
    .map(([key, { summary: _, ...record }]) => `${key} ${canonical(record)}`)
    .sort()
    .join('\n');

const equal = (a, b) => assert.equal(textOf(a), textOf(b));
const holds = (...arguments_) => fc.assert(fc.property(...arguments_), { numRuns: 2000 });

test('the order of two stores does not matter', () =>
  holds(history, history, (x, y) => {
    const [a, b] = [storeOf(x), storeOf(y)];
    equal(union(a, b), union(b, a));
  }));

test('it does not matter which of three come together first', () =>
  holds(history, history, history, (x, y, z) => {
    const [a, b, c] = [storeOf(x), storeOf(y), storeOf(z)];
    equal(union(union(a, b), c), union(a, union(b, c)));
  }));

test('a store that is put into itself, or in twice, is as before', () =>
  holds(history, history, (x, y) => {
    const [a, b] = [storeOf(x), storeOf(y)];
    equal(union(a, a), a);
    equal(union(union(a, b), b), union(a, b));
  }));

test('nothing that either store holds is lost: each key stays', () =>
  holds(history, history, (x, y) => {
    const [a, b] = [storeOf(x), storeOf(y)];
    assert.deepEqual(
      [...union(a, b).keys()].sort(),
      [...new Set([...a.keys(), ...b.keys()])].sort(),
    );
  }));

test('of two versions of a card the one changed last stays', () => {
  const old = { key: 'x', card: { value: 9 }, changed: '2026-11-01T10:00:00.000Z', pinned: true };
  const young = { ...old, card: { value: 1 }, changed: '2026-11-02T10:00:00.000Z' };
  assert.equal(rules.card(old, young), young);
  assert.equal(rules.card(young, old), young);
});

test('the canonical text does not know the order of members, and knows that of lists', () => {
  assert.equal(canonical({ a: 1, b: [{ d: 2, c: 3 }] }), canonical({ b: [{ c: 3, d: 2 }], a: 1 }));
  assert.notEqual(canonical([1, 2]), canonical([2, 1]));
  assert.notEqual(canonical({ a: '1' }), canonical({ a: 1 }));
  assert.ok(same({ id: 'a', summary: { done: 1 } }, { id: 'a', summary: { done: 2 } }));
});
