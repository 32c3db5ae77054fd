import assert from 'node:assert/strict';
import { test } from 'node:test';
import { bikeList } from './bike-list.js';
import { garageList } from './told-list.js';
import { search } from '../words/search.js';

const bike = (id, name) => ({ id, name, years: '2003–2009', layout: 'layout.wet-sump' });
const line = (key, of, changed = '2026-01-01') => ({ key, bike: of, changed, pinned: false });
const job = (of, started, name = 'Corda') => ({
  id: started,
  bike: of,
  started,
  name,
  summary: {},
});
const samples = [bike('corda', 'Tessaly Corda 570'), bike('pip', 'Marrowick Pip 130')];
const word = (id) => id;
const keys = (list) => list.map(({ key }) => key);

/** @returns {any} */
const parted = (rows, jobs = [], lines = []) =>
  garageList(rows, bikeList(lines, samples, jobs, word), jobs);

test('bikes seen last come first, and a card that no job was done on stays a card', () => {
  const rows = [
    { id: 'a', card: 'corda', called: 'Anna', changed: '2026-02-01' },
    { id: 'b', card: 'corda', called: 'Bertha', changed: '2026-01-01' },
  ];
  const { bikes, cards } = parted(rows, [job('b', '2026-03-01'), job('corda', '2026-01-15')]);
  assert.deepEqual(keys(bikes), ['b', 'a', 'corda']);
  assert.deepEqual(keys(cards), ['pip']);
});

test('one that went into another is not listed, nor is its card as a bike', () => {
  const rows = [
    { id: 'a', card: 'corda', changed: '2026-02-01' },
    { id: 'corda', into: 'a', changed: '2026-02-01' },
  ];
  const { bikes, cards } = parted(rows, [job('a', '2026-03-01')]);
  assert.deepEqual(keys(bikes), ['a']);
  assert.deepEqual(keys(cards), ['corda', 'pip']);
});

test('the card of a bike that was laid aside can begin another', () => {
  const rows = [{ id: 'corda', aside: 'sold', changed: '2026-02-01' }];
  const { bikes, cards } = parted(rows);
  assert.deepEqual(keys(bikes), ['corda']);
  assert.deepEqual(
    cards.map(({ at }) => at),
    [['corda', 'card'], undefined],
    'and has an address of its own',
  );
});

test('so can the card of a bike that follows another now', () => {
  const { cards } = parted([{ id: 'corda', card: 'pip' }]);
  assert.deepEqual(keys(cards), ['corda', 'pip']);
  assert.deepEqual(cards[0].at, ['corda', 'card']);
});

test('a bike whose card is gone goes by the model of its last job', () => {
  const [row] = parted(
    [{ id: 'a', card: 'gone', plate: 'X 1' }],
    [job('a', '2026-01-01', 'Old 5')],
  ).bikes;
  assert.equal(row.model, 'Old 5');
});

test('of two versions of one card, the newer is the bike', () => {
  const own = bike('own', 'Own');
  const lines = [line('old', own, '2026-01-01'), line('new', own, '2026-02-01')];
  const { bikes, cards } = parted([{ id: 'x', card: 'pip' }], [job('own', '2026-03-01')], lines);
  assert.deepEqual(keys(bikes), ['new', 'x']);
  assert.deepEqual(keys(cards), ['old', 'corda', 'pip']);
});

const told = {
  id: 'a',
  card: 'corda',
  called: 'Bertha',
  plate: 'AB-12 CD',
  words: 'red tank',
  owner: 'Ada Birch',
};
for (const typed of [
  'ab-12',
  'ab12cd',
  'birch',
  'bertha',
  'tank red',
  'corda',
  '2005',
  'CORDA ada',
])
  test(`a search for "${typed}" finds the bike`, () => {
    const { bikes } = parted([told, { id: 'b', card: 'pip', plate: 'EF 34' }]);
    const fits = keys(search(bikes, typed));
    assert.ok(fits.includes('a'), `${fits}`);
    if (typed !== '2005') assert.deepEqual(fits, ['a']);
  });
