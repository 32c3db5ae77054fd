import assert from 'node:assert/strict';
import { test } from 'node:test';
import { failedInGo } from './go-output.js';
import { goTest, pageTest } from './which.js';

const goFiles = [
  { path: 'internal/oil/blend_test.go', text: 'package oil\n\nfunc TestBlend(t *testing.T) {' },
  { path: 'internal/oil/band_test.go', text: 'package oil\n\nfunc TestBand(t *testing.T) {' },
  { path: 'internal/fill/fill_test.go', text: 'package fill\n\nfunc TestBand(t *testing.T) {' },
  {
    path: 'server/page_test.go',
    text: 'package main\n\nfunc TestPage_Budget(t) {}\n"../build/core.wasm"',
  },
];

const goTests = [
  // what, packages, run, built
  ['TestBlend', ['./internal/oil'], '^TestBlend$', false],
  ['TestBlend/two oils', ['./internal/oil'], '^TestBlend$/two oils', false],
  ['TestBand', ['./internal/oil', './internal/fill'], '^TestBand$', false],
  ['./internal/oil', ['./internal/oil'], '', false],
  ['internal/fill', ['./internal/fill'], '', false],
  ['./internal/oil:TestBand', ['./internal/oil'], '^TestBand$', false],
  ['./server:TestPage_Budget', ['./server'], '^TestPage_Budget$', true],
];

for (const [what, packages, run, built] of goTests) {
  test(`${what} is a test of Go`, () =>
    assert.deepEqual(goTest(what, goFiles), { packages, run, built }));
}

test('a test of Go that is nowhere is refused', () => {
  for (const what of ['TestNone', './internal/none', './internal/none:TestBand'])
    assert.throws(() => goTest(what, goFiles), /There is no test/);
});

const pageFiles = [
  'static/app/backup/backup.test.js',
  'static/app/backup/merge.js',
  'static/app/backup/merge.test.js',
  'static/test/browser/backup.test.js',
];

const pageTests = [
  // what, file, name
  ['merge', 'static/app/backup/merge.test.js', ''],
  ['merge.test.js', 'static/app/backup/merge.test.js', ''],
  ['static/app/backup/merge.test.js', 'static/app/backup/merge.test.js', ''],
  ['browser/backup', 'static/test/browser/backup.test.js', ''],
  [
    'backup/backup:a name: with a colon',
    'static/app/backup/backup.test.js',
    'a name: with a colon',
  ],
];

for (const [what, file, name] of pageTests) {
  test(`${what} is a test of the page`, () => {
    assert.equal(goTest(what, goFiles), undefined);
    assert.deepEqual(pageTest(what, pageFiles), { file, name });
  });
}

test('a file of the page that is not one is refused', () => {
  assert.throws(() => pageTest('backup', pageFiles), /Several are called backup: .*app.*browser/);
  assert.throws(() => pageTest('erge', pageFiles), /There is no test erge/);
});

test('what failed in Go is named as it is asked for', () => {
  const output = `ok  	tidysump/internal/date	0.010s
--- FAIL: TestBlend (0.00s)
    --- FAIL: TestBlend/two_oils (0.00s)
        blend_test.go:7: 3, want 4
--- FAIL: TestBand (0.00s)
FAIL
FAIL	tidysump/internal/oil	0.012s
# tidysump/internal/fill [tidysump/internal/fill.test]
internal/fill/fill.go:3:1: syntax error
FAIL	tidysump/internal/fill [build failed]
ok  	tidysump/server	(cached)
FAIL
`;
  assert.deepEqual(failedInGo(output), [
    './internal/oil:TestBlend',
    './internal/oil:TestBand',
    './internal/fill',
  ]);
});
