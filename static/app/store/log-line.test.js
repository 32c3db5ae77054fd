// What earlier versions kept of a job is understood.
import assert from 'node:assert/strict';
import test from 'node:test';
import { lineOf, understood } from './log-line.js';

const line = (summary) =>
  lineOf({ id: 'a', card: { id: 'one' }, name: 'One', started: 'x', summary });
const read = (summary) => understood(line(summary)).summary;

test('the summary of an earlier version says how far its job has come', () => {
  const finished = '2026-05-01T10:00:00.000Z';
  for (const [summary, phase] of [
    [undefined, 'open'],
    [{}, 'open'],
    [{ next: 'lay-out', done: 1, steps: 38 }, 'open'],
    [{ done: 36, steps: 38, finished, waiting: true }, 'waiting'],
    [{ done: 38, steps: 38, finished }, 'closed'],
  ]) {
    const now = read(summary);
    assert.equal(now.phase, phase, JSON.stringify(summary));
    assert.deepEqual({ ...now, ...summary }, now, 'all else stays');
  }
});

test('and whether what came out is to be watched', () => {
  for (const [verdict, watch] of Object.entries({
    'debris.stop': true,
    'debris.watch': true,
    'debris.normal': false,
    'debris.unsaid': false,
  }))
    assert.equal(read({ done: 1, verdict }).watch, watch, verdict);
  assert.equal(read({ done: 1 }).watch, false, 'nobody looked');
});

test('what this version kept is left as it is', () => {
  const summary = { phase: 'closed', done: 3, verdict: 'debris.stop', watch: true };
  const own = line(summary);
  assert.equal(understood(own), own);
});
