// The memory of the core's program, which never shrinks: what a call needed serves the
// next one.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { test } from 'node:test';
import { door } from '../app/core/door.js';
import { sampleCard } from './browser/words.js';
import { programInNode } from './core-in-node.js';

const cards = readdirSync(new URL('../../specs/cards', import.meta.url)).map((file) =>
  sampleCard(file.replace('.json', '')),
);
const [card] = cards;
const rounds = 8;
// Times what the first needed. When a collection comes is chance, and the heap may double
// before it; what leaks at each call would be more.
const most = 4;

const program = await programInNode();
const call = door(program);
const { steps } = JSON.parse(call('plan', JSON.stringify({ card }))).ok;

/** Events of a job, one second apart. */
const events = (count) =>
  Array.from({ length: count }, (_, n) => ({
    id: `event-${n}`,
    time: new Date(Date.UTC(2026, 0, 1) + 1000 * n).toISOString(),
    kind: 'done',
    step: steps[n % steps.length].id,
  }));

const job = { card: 0, started: '2026-01-01T00:00:00.000Z', events: events(30) };

// What a phone asks for at once when much lies in it.
const large = [
  ['cards', { canonical: true, cards: Array.from({ length: 8 }, () => cards).flat() }],
  ['survey', { cards: [card], jobs: Array.from({ length: 120 }, () => job) }],
  ['replay', { card, events: events(6000) }],
  ['read-page', { text: 'Engine oil drain plug ... 25 N·m (2.5 kgf·m, 18 lbf·ft)\n'.repeat(1700) }],
].map(([op, input]) => [op, JSON.stringify(input)]);

test(`${rounds} rounds of large calls need little more memory than one`, () => {
  const sizes = Array.from({ length: rounds }, () => {
    for (const [op, input] of large) {
      assert.ok(JSON.parse(call(op, input)).ok, op);
      program.exports.rest();
    }
    return program.exports.mem.buffer.byteLength;
  });
  assert.ok(sizes.at(-1) <= most * sizes[0], `bytes after each round: ${sizes}`);
});
