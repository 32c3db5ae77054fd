// The sign of a layout: each layout has one, within its field, that looks like no other.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { nothing } from 'lit-html';
import { outline } from './outline.js';

const schema = JSON.parse(
  readFileSync(new URL('../../../specs/card.schema.json', import.meta.url), 'utf8'),
);
const layouts = schema.properties.layout.enum;

/** What a template puts into its places, in all depths. */
const inside = (part) =>
  Array.isArray(part) ? part.flatMap(inside) : part?.values ? part.values.flatMap(inside) : [part];

const pathOf = (layout) => inside(outline(layout)).findLast((v) => /^M/.test(v));

/** The corners of a path in absolute places, its curves by their ends. */
function corners(path) {
  let [x, y] = [0, 0];
  let start = [0, 0];
  const lines = [];
  for (const [, letter, rest] of path.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const n = (rest.match(/-?\d*\.?\d+/g) ?? []).map(Number);
    const from = letter === letter.toLowerCase() ? [x, y] : [0, 0];
    const to = {
      m: () => [from[0] + n[0], from[1] + n[1]],
      l: () => [from[0] + n[0], from[1] + n[1]],
      h: () => [from[0] + n[0], y],
      v: () => [x, from[1] + n[0]],
      a: () => [from[0] + n[5], from[1] + n[6]],
      z: () => start,
    }[letter.toLowerCase()]();
    if (letter === 'M') start = to;
    else lines.push([x, y, ...to]);
    [x, y] = to;
  }
  return lines;
}

/** Which squares of a field of 13 by 10 a sign draws through. */
function squares(layout) {
  const seen = new Set();
  for (const [x1, y1, x2, y2] of corners(pathOf(layout)))
    for (let n = 0; n <= 50; n++) {
      const [x, y] = [x1 + ((x2 - x1) * n) / 50, y1 + ((y2 - y1) * n) / 50];
      assert.ok(x >= 1 && x <= 51 && y >= 1 && y <= 39, `${layout} leaves its field: ${x}, ${y}`);
      seen.add(`${Math.floor(x / 4)},${Math.floor(y / 4)}`);
    }
  return seen;
}

test('each layout of a card has a sign of its own', () => {
  assert.equal(layouts.length, 11);
  const signs = layouts.map(squares);
  for (const [n, one] of signs.entries())
    for (const [m, other] of signs.entries()) {
      if (m <= n) continue;
      const differ = [...one].filter((at) => !other.has(at)).length;
      const missing = [...other].filter((at) => !one.has(at)).length;
      assert.ok(differ + missing >= 10, `${layouts[n]} looks like ${layouts[m]}`);
    }
  for (const name of ['', undefined, 'constructor', 'airship'])
    assert.equal(outline(name), nothing);
});

test('oil stands in it as high as is told, of each oil by itself', () => {
  // The inner pictures, by their height.
  const heights = (layout, fill) =>
    inside(outline(layout, { fill })).filter(
      (v, n, all) => all[n + 1] === all[n - 1] && v === all[n + 2] && v > 0,
    );
  for (const layout of layouts) {
    assert.deepEqual(heights(layout, 0), [], layout);
    const full = heights(layout, 1);
    assert.ok(full.length > 0, layout);
    assert.deepEqual(heights(layout, 7), full, 'no more than full');
    assert.deepEqual(
      heights(layout, 0.5),
      full.map((height) => height / 2),
      layout,
    );
  }
  assert.equal(heights('separate-oils', 1).length, 3);
  assert.equal(heights('separate-oils', { primary: 1 }).length, 1);
  assert.deepEqual(heights('separate-oils', { constructor: 1 }), []);
});

test('it is read out only with a label', () => {
  const attributes = (how) => inside(outline('scooter', how)).slice(0, 3);
  assert.deepEqual(attributes(), [nothing, nothing, 'true']);
  assert.deepEqual(attributes({ label: 'Drained' }), ['img', 'Drained', nothing]);
});
