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

test('pinned first, then used or changed last, then by name; last the samples without a job', () => {
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
    { started: '2026-05-01', bike: 'worked' },
  ];
  const examples = [bike('sample', 'A sample'), bike('worked', 'Another one')];
  const list = bikeList(lines, examples, jobs, word);
  assert.deepEqual(keys(list), ['pinned', 'worked', 'used', 'changed', 'a', 'b', 'sample']);
  assert.deepEqual(keys(list.filter(({ mine }) => !mine)), ['sample']);
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

const oils = [{ due: { texts: ['3.2 L'] }, grades: ['15W-50'] }];

const found = {
  'one word in any case': ['CORDA', ['corda']],
  'all words in any order': ['570 tess', ['corda']],
  'words of which one is missing': ['corda 900', []],
  'a name without its accents': ['merechal', ['marechal']],
  'a name with accents it has not': ['côrda', ['corda']],
  'a year between': ['2005', ['marechal']],
  'a year outside': ['2011', []],
  'the layout': ['dry tank', ['marechal']],
  'the grade': ['15W-50', ['marechal']],
  'the grade without its sign': ['15w50', ['marechal']],
  'the volume': ['3.2 l', ['marechal']],
  nothing: ['  ', ['marechal', 'corda']],
};

for (const [name, [typed, want]] of Object.entries(found)) {
  test(`a search for ${name} ("${typed}")`, () => {
    const lines = [
      line('corda', bike('1', 'Tessaly Corda 570', '1998')),
      line('marechal', { ...bike('2', 'Merèchal', '2003–2009', 'layout.dry-sump'), oils }),
    ];
    assert.deepEqual(keys(search(bikeList(lines, [], [], word), typed)), want);
  });
}
