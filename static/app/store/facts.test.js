import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Drafts, flush } from './drafts.js';
import { factsOf, forget, tell } from './facts.js';
import { photosOf } from './photos.js';
import { besideOf } from './job-events.js';
import { putAll } from './whole.js';

globalThis.document = { visibilityState: 'hidden' };

const called = (value) => ({ kind: 'told', what: 'called', value });
const values = async (...of) => (await factsOf(...of)).map(({ value }) => value);

test('what was told is kept with its place among all that was told of the subject', async () => {
  await tell('bike', 'one', called('Blue'));
  await tell('bike', 'one', called('Red'));
  await tell('bike', 'other', called('Green'));
  await tell('visit', 'one', { kind: 'said', what: 'wish', value: 'all well' });
  const facts = await factsOf('bike', 'one');
  assert.deepEqual(
    facts.map(({ book, of, seq, value }) => [book, of, seq, value]),
    [
      ['bike', 'one', 1, 'Blue'],
      ['bike', 'one', 2, 'Red'],
    ],
  );
  assert.match(facts[0].day, /^\d{4}-\d\d-\d\d$/);
  assert.deepEqual((await values('bike')).sort(), ['Blue', 'Green', 'Red']);
  assert.deepEqual(await values('visit', 'one'), ['all well']);
});

test('what is told at once finds what came before, each the next', async () => {
  const seen = [];
  const check = async (facts) => (seen.push(facts.map(({ value }) => value)), []);
  await Promise.all(['1', '2', '3'].map((n) => tell('oil', 'can', called(n), { check })));
  assert.deepEqual(seen, [['1'], ['1', '2'], ['1', '2', '3']]);
  assert.deepEqual(
    (await factsOf('oil', 'can')).map(({ seq }) => seq),
    [1, 2, 3],
  );
});

test('what the core refuses is not kept, what it doubts is, and the next one goes on', async () => {
  const finding = (grade, where = '/') => ({ code: 'x', where, grade });
  const says = (answer) => ({ check: async () => answer });
  for (const [answer, found, kept] of [
    [{ findings: [finding('refuse')] }, 1, false],
    [{ ok: { findings: [finding('refuse')] } }, 1, false],
    [[finding('refuse')], 1, false],
    [{ ok: { findings: [finding('doubt')] } }, 1, true],
    [{ ok: { findings: [finding('refuse', '/facts/9999/value')] } }, 0, true], // of another
    [{ ok: {} }, 0, true],
  ]) {
    const before = await values('shelf', 'item');
    const findings = await tell('shelf', 'item', called('x'), says(answer));
    assert.equal(findings.length, found);
    const after = await values('shelf', 'item');
    assert.equal(after.length - before.length, Number(kept), JSON.stringify(answer));
  }
  await assert.rejects(
    tell('shelf', 'item', called('x'), { check: () => Promise.reject(new Error('gone')) }),
  );
  assert.deepEqual(await tell('shelf', 'item', called('y')), []);
  assert.equal((await values('shelf', 'item')).at(-1), 'y');
});

test('a fact takes its drafts and its picture with it, or neither', async () => {
  const drafts = await Drafts.open('details/photo');
  drafts.put('words', 'blue tank');
  await flush();
  const photo = { what: 'other', blob: new Blob(['x']), bytes: 1 };
  const how = { photo, drafts: [drafts.key('words')] };
  const refuses = { check: async () => [{ code: 'x', where: '/', grade: 'refuse' }] };
  await tell('bike', 'photo', { kind: 'photo', what: 'other' }, { ...how, ...refuses });
  assert.equal(drafts.get('words'), 'blue tank');
  assert.deepEqual(await photosOf('photo'), []);
  await tell('bike', 'photo', { kind: 'photo', what: 'other' }, how);
  assert.equal(drafts.get('words'), undefined);
  const [{ id }] = await factsOf('bike', 'photo');
  assert.deepEqual(
    (await photosOf('photo')).map(({ id, what }) => [id, what]),
    [[id, 'other']],
  );
});

test('what is forgotten is gone for good, with its picture and what stood beside it; all else stays', async () => {
  const photo = { what: 'other', blob: new Blob(['x']), bytes: 1 };
  await tell('bike', 'gone', { kind: 'photo' }, { photo });
  await tell('bike', 'gone', called('Stays'));
  const [fact] = await factsOf('bike', 'gone');
  const beside = (id) => ({ job: '["bike","gone"]', kind: 'fact', id, text: '{}' });
  await putAll({ beside: [beside(fact.id), beside('another')] });
  await forget([fact]);
  assert.deepEqual(await values('bike', 'gone'), ['Stays']);
  assert.deepEqual(await photosOf('gone'), []);
  assert.deepEqual(await besideOf('["bike","gone"]'), [beside('another')]);
});

test('a number from elsewhere that is none hinders nobody', async () => {
  const odd = (id, seq) => ({ book: 'wrench', of: 'w', id, kind: 'x', time: '', day: '', seq });
  await putAll({ facts: [odd('a', 1e300), odd('b', -1), odd('c', 'x'), odd('d', 4)] });
  await tell('wrench', 'w', called('next'));
  assert.equal((await factsOf('wrench', 'w')).find(({ value }) => value === 'next').seq, 5);
});
