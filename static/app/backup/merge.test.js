// What comes in joins what is here, over random histories with hostile ids and contents:
// neither order nor repetition nor grouping matters to what is held, and what is here counts.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { canonical, merged, mergedFact, same } from './merge.js';

const few = (...words) => fc.constantFrom(...words);
const value = few('x', 7, null, [1, 2], { b: 1, a: 2 }, { a: 2, b: 1 }, { ['__proto__']: 1 });
const event = fc.record(
  { id: few('1', '2', '__proto__', 'constructor'), kind: few('done', 'note'), text: value },
  { requiredKeys: ['id', 'kind'] },
);
const record = fc.record(
  {
    id: fc.constant('j'),
    started: few('2026-11-01', '2026-11-02'),
    card: few({ make: 'a' }, { make: 'b' }),
    steps: few(['one'], ['one', 'two']),
    summary: few({ done: 1 }, { done: 2 }),
  },
  { requiredKeys: ['id', 'started', 'card'] },
);
const history = fc.record({
  records: fc.array(record, { maxLength: 5 }),
  events: fc.array(event, { maxLength: 8 }),
});

const nothing = { events: [], beside: [] };

/** What is held once more has come in. */
function join(here, coming) {
  const fresh = merged('j', here, coming);
  return {
    record: fresh.record ?? here.record,
    events: [...here.events, ...fresh.events],
    beside: [...here.beside, ...fresh.beside],
  };
}

/** What one phone hands to another: what counts, and then what is beside it. */
const given = ({ record: own, events, beside }) => {
  const others = (of) =>
    beside.filter(({ kind }) => kind === of).map(({ text }) => JSON.parse(text));
  return {
    records: [...(own ? [own] : []), ...others('job')],
    events: [...events, ...others('event')],
  };
};

const storeOf = (...histories) => histories.reduce(join, nothing);
const union = (a, b) => join(a, given(b));

/** The contents of a store; a record that another says too, with its steps, is none of its own. */
function contents(store) {
  const { records, events } = given(store);
  const lasting = records.map(({ summary: _, ...rest }) => rest);
  const without = lasting
    .filter(({ steps }) => steps)
    .map(({ steps: _, ...rest }) => canonical(rest));
  const jobs = lasting.map(canonical).filter((text) => !without.includes(text));
  return [...new Set([...jobs, ...events.map((each) => `event ${canonical(each)}`)])].sort();
}

const equal = (a, b) => assert.deepEqual(contents(a), contents(b));
const holds = (...arguments_) => fc.assert(fc.property(...arguments_), { numRuns: 2000 });

test('the order of two stores does not matter to what is held', () =>
  holds(history, history, (x, y) => {
    const [a, b] = [storeOf(x), storeOf(y)];
    equal(union(a, b), union(b, a));
  }));

test('it does not matter which of three come together first', () =>
  holds(history, history, history, (x, y, z) => {
    const [a, b, c] = [storeOf(x), storeOf(y), storeOf(z)];
    equal(union(union(a, b), c), union(a, union(b, c)));
  }));

test('a store that is put into itself, or in twice, is as before to the letter', () =>
  holds(history, history, (x, y) => {
    const [a, b] = [storeOf(x), storeOf(y)];
    assert.deepEqual(union(a, a), a);
    assert.deepEqual(union(union(a, b), b), union(a, b));
  }));

test('what is here counts as before, and all that either holds is held', () =>
  holds(history, history, (x, y) => {
    const [a, b] = [storeOf(x), storeOf(y)];
    const both = union(a, b);
    assert.deepEqual(both.events.slice(0, a.events.length), a.events);
    assert.deepEqual(both.beside.slice(0, a.beside.length), a.beside);
    if (a.record) assert.deepEqual(both.record.card, a.record.card);
    const all = contents(both);
    for (const text of [...contents(a), ...contents(b)])
      assert.ok(
        all.includes(text) ||
          all.some((other) => canonical({ ...parse(other), steps: undefined }) === text),
        text,
      );
  }));

const told = fc.record(
  {
    book: few('bike', 'visit'),
    of: few('a', '__proto__'),
    id: few('1', '2', 'constructor'),
    kind: few('told', 'undo'),
    seq: few(1, 2, 7),
    value: few('x', 'y', '\u{1f527}', '\ud83d'),
    signs: few({ b: '1', a: '2' }, { a: '2', b: '1' }),
  },
  { requiredKeys: ['book', 'of', 'id', 'kind'] },
);
const tellings = fc.array(told, { maxLength: 8 });
const keyOf = ({ book, of, id }) => JSON.stringify([book, of, id]);

/** A store of facts once more has come in: Map of key -> {fact, beside}. */
function taken(store, coming) {
  const all = new Map(store);
  for (const fact of coming) {
    const here = all.get(keyOf(fact)) ?? { beside: [] };
    const fresh = mergedFact(here, [fact]);
    const beside = [...here.beside, ...fresh.beside].sort();
    all.set(keyOf(fact), { fact: fresh.fact ?? here.fact, beside });
  }
  return all;
}
const factsGiven = (store) =>
  [...store.values()].flatMap(({ fact, beside }) => [
    fact,
    ...beside.map((text) => JSON.parse(text)),
  ]);
const joined = (a, b) => taken(a, factsGiven(b));
const factStore = (list) => taken(new Map(), list);

/** A store of facts as a text: two that are alike have one. */
const textOf = (store) =>
  canonical([...store].map(([key, { fact, beside }]) => canonical([key, fact, beside])).sort());
const alike = (a, b) => assert.equal(textOf(a), textOf(b));

test('of facts the same stand, whichever store comes first, in whichever groups, however often', () =>
  holds(tellings, tellings, tellings, (x, y, z) => {
    const [a, b, c] = [factStore(x), factStore(y), factStore(z)];
    alike(joined(a, b), joined(b, a));
    alike(joined(joined(a, b), c), joined(a, joined(b, c)));
    alike(joined(a, a), a);
    alike(joined(joined(a, b), b), joined(a, b));
    alike(factStore([...x, ...y].reverse()), joined(a, b));
  }));

test('of two contents of one fact that one stands whose text sorts first, and both are held', () =>
  holds(tellings, (list) => {
    for (const [key, { fact, beside }] of factStore(list)) {
      const texts = [...new Set(list.filter((each) => keyOf(each) === key).map(canonical))].sort();
      assert.deepEqual([canonical(fact), ...beside], texts);
    }
  }));

const parse = (text) => (text.startsWith('event ') ? {} : JSON.parse(text));

test('no id counts twice, and no content stands both here and beside', () =>
  holds(history, history, (x, y) => {
    const { events, beside } = union(storeOf(x), storeOf(y));
    assert.equal(new Set(events.map(({ id }) => id)).size, events.length);
    const counting = new Set(events.map(canonical));
    for (const { kind, text } of beside) if (kind === 'event') assert.ok(!counting.has(text), text);
    const keys = beside.map(({ kind, id, text }) => [kind, id, text].join('\0'));
    assert.equal(new Set(keys).size, keys.length);
  }));

test('what is new says what it came from', () =>
  holds(history, history, (x, y) => {
    const fresh = merged('j', storeOf(x), y);
    const { length } = fresh.from;
    const records = fresh.from.filter((from) => y.records.includes(from)).length;
    assert.equal(
      length - records,
      fresh.events.length + fresh.beside.filter(({ kind }) => kind === 'event').length,
    );
    assert.ok(fresh.from.every((from) => y.records.includes(from) || y.events.includes(from)));
  }));

test('the steps that a job began with come to a record that lacks them, and to no other', () => {
  const plain = { id: 'j', started: 'then', card: { make: 'a' } };
  const full = { ...plain, steps: ['one'] };
  assert.deepEqual(
    merged('j', { ...nothing, record: plain }, { records: [full], events: [] }).record,
    full,
  );
  assert.deepEqual(
    merged('j', { ...nothing, record: full }, { records: [plain], events: [] }).from,
    [],
  );
  const other = merged(
    'j',
    { ...nothing, record: full },
    { records: [{ ...full, steps: [] }], events: [] },
  );
  assert.equal(other.record, undefined);
  assert.equal(other.beside.length, 1);
});

test('the canonical text does not know the order of members, and knows that of lists', () => {
  assert.equal(canonical({ a: 1, b: [{ d: 2, c: 3 }] }), canonical({ b: [{ c: 3, d: 2 }], a: 1 }));
  assert.notEqual(canonical([1, 2]), canonical([2, 1]));
  assert.notEqual(canonical({ a: '1' }), canonical({ a: 1 }));
  assert.ok(same({ a: 1, b: 2 }, { b: 2, a: 1 }));
});

test('steps that lack what was done in a job are not those that it began with', () => {
  const here = storeOf({
    records: [{ id: 'j', card: {} }],
    events: [{ id: '1', kind: 'done', step: 'lay-out' }],
  });
  for (const [steps, taken] of [
    [['identify', 'lay-out', 'tray'], true],
    [['identify', 'no-such-step'], false],
  ]) {
    const { record: own, beside } = merged('j', here, {
      records: [{ id: 'j', card: {}, steps }],
      events: [],
    });
    assert.deepEqual([own?.steps, beside.length], taken ? [steps, 0] : [undefined, 1], `${steps}`);
  }
});
