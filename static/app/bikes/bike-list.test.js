import assert from 'node:assert/strict';
import { test } from 'node:test';
import { bikeList } from './bike-list.js';
import { search } from '../words/search.js';

const bike = (id, name, years = '', layout = 'layout.wet-sump') => ({ id, name, years, layout });
const line = (key, of, changed = '2026-01-01', pinned = false) => ({
  key,
  bike: of,
  changed,
  pinned,
});
const word = (id) => ({ 'layout.dry-sump': 'Dry sump with a tank' })[id] ?? 'Wet sump';
const keys = (list) => list.map(({ key }) => key);

test('pinned first, then used or changed last, then by name; samples last', () => {
  const lines = [
    line('b', bike('b', 'Bravo')),
    line('a', bike('a', 'alpha')),
    line('changed', bike('c', 'Charlie'), '2026-03-01'),
    line('used', bike('u', 'Uniform')),
    line('pinned', bike('p', 'Papa'), '2025-01-01', true),
  ];
  const jobs = [
    { started: '2026-04-01', bike: 'u' },
    { started: '2024-04-01', bike: 'u' },
    { started: '2026-05-01', bike: 'sample' },
  ];
  const list = bikeList(lines, [bike('sample', 'A sample')], jobs, word);
  assert.deepEqual(keys(list), ['pinned', 'used', 'changed', 'a', 'b', 'sample']);
});

test('two versions of one card are told apart, a sample beside them is none', () => {
  const lines = [
    line('one', bike('x', 'X')),
    line('two', bike('x', 'X')),
    line('y', bike('y', 'Y')),
  ];
  const list = bikeList(lines, [bike('y', 'Y')], [], word);
  assert.deepEqual(
    list.map(({ twin = false }) => twin),
    [true, true, false, false],
  );
});

const found = {
  'one word in any case': ['CORDA', ['corda']],
  'all words in any order': ['570 tess', ['corda']],
  'words of which one is missing': ['corda 900', []],
  'a name without its accents': ['merechal', ['marechal']],
  'a name with accents it has not': ['côrda', ['corda']],
  'a year between': ['2005', ['marechal']],
  'a year outside': ['2011', []],
  'the layout': ['dry tank', ['marechal']],
  nothing: ['  ', ['marechal', 'corda']],
};

for (const [name, [typed, want]] of Object.entries(found)) {
  test(`a search for ${name} ("${typed}")`, () => {
    const lines = [
      line('corda', bike('1', 'Tessaly Corda 570', '1998')),
      line('marechal', bike('2', 'Merèchal', '2003–2009', 'layout.dry-sump')),
    ];
    assert.deepEqual(keys(search(bikeList(lines, [], [], word), typed)), want);
  });
}
