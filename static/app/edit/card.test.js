// A card as the editor writes it: places, sections, parts.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { addPart, blankCard, removePart } from './parts.js';
import { at, put } from './pointer.js';
import { sectionsOf, textOf } from './sections.js';

const table = JSON.parse(
  readFileSync(new URL('../../../specs/entries.json', import.meta.url), 'utf8'),
);
const blank = () => blankCard('wet-sump', 'edit.filter-spin-on', table, 'own-1');
const places = (card) => sectionsOf(card, table).flatMap(({ entries }) => entries.map((e) => e.at));

test('a value goes to its place, and what lies above is made', () => {
  const card = {};
  put(card, '/bolts/0/seal/kind', 'o-ring');
  assert.deepEqual(card, { bolts: [{ seal: { kind: 'o-ring' } }] });
  assert.equal(at(card, '/bolts/0/seal/kind'), 'o-ring');
  assert.equal(at(card, '/bolts/4/seal/kind'), undefined);
  put(card, '/bolts/0/seal', undefined);
  assert.deepEqual(card, { bolts: [{}] });
});

test('a new card asks only for what such a bike has', () => {
  const asked = places(blank());
  assert.ok(asked.includes('/circuits/0/withFilter'));
  assert.ok(!asked.includes('/circuits/0/level/band'), 'no marks before the gauge is known');
  assert.ok(!asked.includes('/circuits/0/everyNth'), 'the engine oil is due each time');
  const card = blank();
  put(card, '/circuits/0/level/device', 'window');
  assert.ok(places(card).includes('/circuits/0/level/band'));
  const without = blankCard('wet-sump', '', table, 'own-2');
  assert.ok(!places(without).includes('/circuits/0/withFilter'), 'no filter, no such volume');
  assert.deepEqual(
    without.bolts.map(({ purpose }) => purpose),
    ['drain-plug', 'filler-cap'],
  );
});

test('parts have ids of their own and hold what they came with', () => {
  const card = blank();
  addPart(card, table, 'purpose.drain-plug');
  addPart(card, table, 'edit.filter-cartridge');
  const ids = [...card.bolts, ...card.filters].map(({ id }) => id);
  assert.equal(new Set(ids).size, ids.length, ids.join());
  assert.equal(card.bolts.at(-1).of, card.filters[1].id);
});

test('a filter takes what held it along; a cap that drains stays', () => {
  const card = blank();
  removePart(card, '/filters/0');
  assert.deepEqual(
    card.bolts.map(({ purpose }) => purpose),
    ['drain-plug', 'filler-cap'],
  );
  addPart(card, table, 'part.strainer');
  removePart(card, '/strainers/0');
  const cap = card.bolts.find(({ purpose }) => purpose === 'strainer-cap');
  assert.ok(cap.drains);
  assert.equal(cap.of, undefined);
});

test('words of the manual go with the part that they are of', () => {
  const card = blank();
  const words = 'Drain plug 25, filter 12';
  const says = '25 N·m';
  const [drain, can] = card.bolts.map(({ id }) => ({ at: `${id}/torque`, says }));
  const engine = { at: `${card.circuits[0].id}/oilOnly`, says };
  card.quotes = [
    { words, of: [drain, can, { at: '/interval/time', says }, engine] },
    { words: 'Filter 12', of: [can] },
  ];
  removePart(card, '/filters/0');
  assert.deepEqual(card.quotes, [{ words, of: [drain, { at: '/interval/time', says }, engine] }]);
});

test('figures stand as a person types them', () => {
  const card = {
    bolts: [{ torque: { value: 18, to: 22, unit: 'lbf·ft' }, size: { standing: 'unknown' } }],
  };
  assert.equal(textOf(card, { at: '/bolts/0/torque', kind: 'torque' }), '18–22 lbf·ft');
  assert.equal(textOf(card, { at: '/bolts/0/size', kind: 'length' }), '');
  assert.equal(textOf({ notes: ['a', 'b'] }, { at: '/notes', kind: 'lines' }), 'a\nb');
});

test('a panel belongs to no oil, and an oil is not taken away', () => {
  const card = blank();
  for (const word of ['purpose.panel', 'purpose.leave-alone', 'purpose.drain-plug'])
    addPart(card, table, word);
  const [panel, alone, plug] = card.bolts.slice(-3);
  assert.deepEqual(
    [panel.circuit, alone.circuit, plug.circuit],
    [undefined, undefined, card.circuits[0].id],
  );
  assert.ok(!('apart' in panel), 'what the table says is not written into the card');
  const parts = sectionsOf(card, table).filter((section) => section.at);
  for (const { at: pointer, removable } of parts)
    assert.equal(removable, !pointer.startsWith('/circuits'), pointer);
  assert.ok(parts.some(({ removable }) => removable));
});

test('what is in front of a part is chosen among the others, by their names', () => {
  const card = blank();
  addPart(card, table, 'purpose.panel');
  addPart(card, table, 'purpose.leave-alone');
  put(card, '/bolts/3/place', 'under the engine');
  const asked = (place) =>
    sectionsOf(card, table)
      .flatMap(({ entries }) => entries)
      .find((entry) => entry.at === place);
  const { names } = asked('/filters/0/behind');
  assert.deepEqual(names.get('panel'), ['purpose.panel', 'under the engine']);
  assert.deepEqual([...names.keys()], ['drain-plug', 'filter-can', 'filler-cap', 'panel']);
  assert.ok(!asked('/bolts/3/behind').words.includes('panel'), 'a panel in front of itself');
  put(card, '/bolts/0/behind', 'filter');
  assert.ok(asked('/bolts/0/behind').words.includes('filter'), 'what was chosen stays');
  assert.equal(asked('/bolts/4/behind'), undefined, 'what must be left alone stays where it is');
  assert.equal(asked('/bolts/0/circuit'), undefined, 'one oil is no choice');
});

test('nothing is behind what was taken away', () => {
  const card = blank();
  addPart(card, table, 'purpose.panel');
  put(card, '/filters/0/behind', 'panel');
  put(card, '/bolts/0/behind', 'filler-cap');
  removePart(card, '/bolts/3');
  assert.equal(card.filters[0].behind, undefined);
  assert.equal(card.bolts[0].behind, 'filler-cap');
});

test('a note is added for a step, and taken away alone', () => {
  const card = blank();
  addPart(card, table, 'edit.note-at');
  assert.deepEqual(card.notesAt, [{ at: 'drain', text: '' }]);
  assert.ok(places(card).includes('/notesAt/0/text'));
  const bolts = structuredClone(card.bolts);
  removePart(card, '/notesAt/0');
  assert.deepEqual([card.notesAt, card.bolts], [[], bolts]);
});

test('a row of the chart of grades is added for an oil, and asks for its air', () => {
  const card = blank();
  addPart(card, table, 'edit.chart-row');
  assert.deepEqual(card.chart, [{ grade: '', circuit: card.circuits[0].id }]);
  for (const name of ['grade', 'from', 'to']) assert.ok(places(card).includes(`/chart/0/${name}`));
  put(card, '/chart/0/from', { value: 0, unit: '°C', standing: 'manual' });
  assert.equal(textOf(card, { at: '/chart/0/from', kind: 'temperature' }), '0 °C');
  put(card, '/circuits/0/oil/service', 'SL/CF');
  assert.equal(textOf(card, { at: '/circuits/0/oil/service', kind: 'service' }), 'SL/CF');
  removePart(card, '/chart/0');
  assert.deepEqual(card.chart, []);
});
