import assert from 'node:assert/strict';
import { test } from 'node:test';
import { olderStyle } from './older-style.js';
import { newerIn, sampleReport } from './samples.js';
import { checkStyle } from './style.js';

const newer = (text) => newerIn((report) => checkStyle(report, 'a.css', text));

const samples = {
  'a { color: light-dark(#000, #fff) }': ['css.types.color.light-dark'],
  'a { --c: light-dark(#000, #fff) }': ['css.types.color.light-dark'],
  'a { background: linear-gradient(#000, color-mix(in srgb, red, blue)) }': [
    'css.types.color.color-mix',
  ],
  '@media (width < 40rem) { a { top: 0 } }': ['css.at-rules.media.range_syntax'],
  '@media (20rem <= width <= 40rem) { a { top: 0 } }': ['css.at-rules.media.range_syntax'],
  '@media (max-width: 40rem) and (prefers-reduced-motion: reduce) { a { top: 0 } }': [],
  'a { width: 10dvh }': ['css.types.length.viewport_percentage_units_dynamic'],
  'a { width: calc(100% - 2svw) }': ['css.types.length.viewport_percentage_units_small'],
  'a { width: 10cqw; container-type: inline-size }': [
    'css.properties.container-type',
    'css.properties.container-type.inline-size',
    'css.types.length.container_query_length_units',
  ],
  'a { overflow-wrap: anywhere; inset: 0; gap: 1px; aspect-ratio: 1 }': [],
  'a { text-wrap: balance }': ['css.properties.text-wrap', 'css.properties.text-wrap.balance'],
  'a { grid-template-columns: subgrid }': ['css.properties.grid-template-columns.subgrid'],
  'a { writing-mode: vertical-lr }': [
    'css.properties.writing-mode.vertical_oriented_form_controls',
  ],
  'a { color: rgb(from red r g b) }': ['css.types.color.rgb.relative_syntax'],
  'a { & b { top: 0 } }': ['css.selectors.nesting'],
  'a:has(b) { top: 0 }': ['css.selectors.has'],
  ':is(a, b):not(c, d):focus-visible { top: 0 }': [],
  'li:nth-child(2 of .a) { top: 0 }': ['css.selectors.nth-child.of_syntax'],
  '@container (min-width: 1px) { a { top: 0 } }': ['css.at-rules.container'],
  '@layer a { b { top: 0 } }': [],
  '@property --a { syntax: "*"; inherits: false }': [
    'css.at-rules.property',
    'css.at-rules.property.inherits',
    'css.at-rules.property.syntax',
  ],
  '@starting-style { a { top: 0 } }': ['css.at-rules.starting-style'],
};

for (const [text, want] of Object.entries(samples))
  test(text, () => assert.deepEqual(newer(text), want));

test('a selector that is newer takes its list down with it', () => {
  const report = sampleReport();
  checkStyle(report, 'a.css', 'a:has(b), c { top: 0 }');
  assert.equal(report.wrong.length, 1);
  assert.match(report.wrong[0], /a list of selectors dies.*css\.selectors\.has.*a:has\(b\), c/);
  checkStyle(report, 'a.css', 'a:has(b) { top: 0 } c { top: 0 }');
  assert.equal(report.wrong.length, 1);
});

test('an older value before a newer one is told', () => {
  const before = (text) => {
    const report = sampleReport();
    checkStyle(report, 'a.css', text);
    return [...report.found.values()].map((one) => one.before);
  };
  assert.deepEqual(before('a { height: 100vh; height: 100dvh }'), [true]);
  assert.deepEqual(before('a { height: 100dvh; height: 100vh }'), [false]);
  assert.deepEqual(before('a { height: 1px; height: 1dvh } b { height: 2dvh }'), [false]);
  assert.deepEqual(before('a { --h: 1px; --h: 1dvh }'), [false], 'none is refused there');
});

test('what the data does not know is told', () => {
  const report = sampleReport();
  const text =
    'a { frobnicate: 1; width: 1fro; color: frob(1); float: sideways } b:frob { top: 0 } @media (frob: 1) { a { top: 0 } }';
  checkStyle(report, 'a.css', text);
  checkStyle(report, 'a.css', 'a { .frob { top: 0 } } a { top }');
  const unknown = [...report.unknown.keys()].join('\n');
  for (const what of [
    'property: frobnicate',
    'unit: fro',
    'function: frob',
    'value: float: sideways',
    'selector: frob',
    'media feature: frob',
    "that can't be read",
  ])
    assert.ok(unknown.includes(what), `${what} in ${unknown}`);
});

test('a sheet without what is newer is what an old browser reads', () => {
  const { promised } = sampleReport();
  const text =
    'a{top:0;height:1dvh}b:has(c){top:0}@media (width<1px){a{top:0}}@media (max-width:1px){a{color:light-dark(red,tan)}}';
  assert.equal(olderStyle(text, promised), 'a{top:0}@media (max-width:1px){a{}}');
});
