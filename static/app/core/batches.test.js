import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { batches } from './batches.js';

const lengthOf = (list) => list.reduce((sum, { length }) => sum + length, 0);

test('texts go in order, none twice, in calls that are full and not over-full', () => {
  const texts = fc.array(fc.string({ maxLength: 12 }));
  fc.assert(
    fc.property(texts, fc.integer({ min: 1, max: 30 }), (all, letters) => {
      const runs = [...batches(all, letters)];
      assert.deepEqual(runs.flat(), all);
      for (const [n, run] of runs.entries()) {
        assert.ok(run.length === 1 || lengthOf(run) <= letters, JSON.stringify(run));
        const [next] = runs[n + 1] ?? [];
        if (next !== undefined) assert.ok(lengthOf(run) + next.length > letters);
      }
    }),
  );
});
