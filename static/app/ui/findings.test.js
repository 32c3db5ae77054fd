import assert from 'node:assert/strict';
import { test } from 'node:test';
import { runs } from './findings.js';

const without = (step) => ({ code: 'finished-without', values: { step } });
const other = { code: 'torque-off' };
const shape = (list) =>
  runs(list).map((run) => run.map(({ code, values }) => values?.step ?? code));

test('steps that were not told are said together, all else stands alone', () => {
  assert.deepEqual(shape([other, without('@a'), without('@b'), other, other, without('@c')]), [
    ['torque-off'],
    ['@a', '@b'],
    ['torque-off'],
    ['torque-off'],
    ['@c'],
  ]);
  assert.deepEqual(shape([]), []);
});
