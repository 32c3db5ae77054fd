// What counts as growth of what a page and its core hold.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { grown } from './memory.js';

const MiB = 2 ** 20;
const held = { page: 8_000_000, made: 4_000_000, drawn: 900_000, core: 9.5 * MiB, nodes: 1200 };

test('growth is more than a tenth, and of memory that grows in steps more than a step too', () => {
  for (const [name, size, wrong] of [
    ['page', 8_800_000, false],
    ['page', 8_800_001, true],
    ['made', 4_500_000, true],
    ['nodes', 1320, false],
    ['nodes', 1321, true],
    ['drawn', 9_000_000, false], // proves nothing by itself
    ['core', 9.5 * MiB, false],
    ['core', 10.5 * MiB, false], // one step
    ['core', 11.5 * MiB, true], // two
    ['core', 8.5 * MiB, false],
  ]) {
    const sentences = [`${name} grew from ${held[name]} to ${size}`];
    assert.deepEqual(grown([held], [{ ...held, [name]: size }]), wrong ? sentences : [], name);
  }
});

test('a large memory may grow by a tenth and a step, and what grows without end is found', () => {
  const large = { core: 40 * MiB };
  assert.deepEqual(grown([large], [{ core: 45 * MiB }]), []);
  assert.equal(grown([large], [{ core: 46 * MiB }]).length, 1);
  // Whatever a program leaks in a round: there is a round in which it is told.
  for (const leak of [10_000, 100_000, 2 * MiB]) {
    const after = (round) => ({ core: Math.ceil((9 * MiB + round * leak) / MiB) * MiB });
    assert.deepEqual(grown([after(0)], [after(0)]), [], `${leak} bytes a round, none yet`);
    const rounds = Math.ceil((3 * MiB) / leak);
    assert.equal(grown([after(0)], [after(rounds)]).length, 1, `${leak} bytes a round`);
  }
});

test('one sample that lies apart proves nothing', () => {
  const apart = { ...held, page: 30_000_000 };
  assert.deepEqual(grown([held, held, held], [held, apart, held]), []);
  assert.equal(grown([held, held, held], [apart, held, apart]).length, 1);
});
