import assert from 'node:assert/strict';
import { test } from 'node:test';
import { differences } from './differences.js';

const volume = (value, page) => ({ value, unit: 'L', standing: 'manual', page });
const card = (...circuits) => ({ make: 'Plainford', circuits });

test('a figure that differs is told once, as it is read', () => {
  const one = card({ id: 'engine', oilOnly: volume(1.6, '3-1') });
  const other = card({ id: 'engine', oilOnly: volume(1.8, '3-2') });
  assert.deepEqual(differences(one, other), [
    { where: ['circuits', 'engine', 'oilOnly'], values: ['1.6 L', '1.8 L'] },
  ]);
});

test('the same figure from another page differs in the page', () => {
  const one = card({ id: 'engine', oilOnly: volume(1.6, '3-1') });
  const other = card({ id: 'engine', oilOnly: volume(1.6, '3-2') });
  assert.deepEqual(differences(one, other), [
    { where: ['circuits', 'engine', 'oilOnly', 'page'], values: ['3-1', '3-2'] },
  ]);
});

test('parts are compared by their ids, whatever their order', () => {
  const [a, b] = [{ id: 'a' }, { id: 'b', role: 'engine' }];
  assert.deepEqual(differences(card(a, b), card(b, a)), []);
  assert.deepEqual(differences(card(a, b), card(a)), [
    { where: ['circuits', 'b', 'id'], values: ['b', undefined] },
    { where: ['circuits', 'b', 'role'], values: ['engine', undefined] },
  ]);
});

test('of several alike each is compared', () => {
  const seals = (...inner) => ({ seals: inner.map((size) => ({ kind: 'o-ring', size })) });
  assert.deepEqual(differences(seals(38, 10), seals(40, 10)), [
    { where: ['seals', 'o-ring', 'size'], values: [38, 40] },
  ]);
  const notes = (...texts) => ({ notesAt: texts.map((text) => ({ at: 'drain', text })) });
  assert.deepEqual(differences(notes('one', 'two'), notes('one', 'three', 'four')), [
    { where: ['notesAt', 'drain 2', 'text'], values: ['two', 'three'] },
    { where: ['notesAt', 'drain 3', 'at'], values: [undefined, 'drain'] },
    { where: ['notesAt', 'drain 3', 'text'], values: [undefined, 'four'] },
  ]);
});

test('a row of the chart is told by its grade', () => {
  const chart = (value) => ({ chart: [{ grade: '10W-40', from: { value, unit: '°C' } }] });
  assert.deepEqual(differences(chart(0), chart(-10)), [
    { where: ['chart', '10W-40', 'from'], values: ['0 °C', '-10 °C'] },
  ]);
});

test('of a great many differences the first are told', () => {
  const notes = (word) => ({ notes: Array.from({ length: 500 }, (_, n) => `${word} ${n}`) });
  assert.equal(differences(notes('one'), notes('other')).length, 40);
});
