import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ago, digits, left, nextCheck } from './countdown.js';

const at = (time) => Date.parse(`2026-11-25T${time}Z`);
const timer = { until: '2026-11-25T10:14:00.000Z' };

test('what is left follows from the end alone, before and after it', () => {
  assert.equal(left(timer, at('10:09:00.250')), 299_750);
  assert.equal(left(timer, at('10:14:00.000')), 0);
  assert.equal(left(timer, at('10:15:00.000')), -60_000);
});

test('digits: the second that has begun counts, and nothing is less than nothing', () => {
  const rows = [
    [300_000, '5:00'],
    [299_001, '5:00'],
    [299_000, '4:59'],
    [60_000, '1:00'],
    [59_999, '1:00'],
    [9_500, '0:10'],
    [1, '0:01'],
    [0, '0:00'],
    [-5_000, '0:00'],
    [3_600_000, '1:00:00'],
    [3_725_000, '1:02:05'],
  ];
  for (const [ms, want] of rows) assert.equal(digits(ms), want, `${ms} ms`);
});

test('ago: in seconds, minutes, hours, days, never more than has passed', () => {
  const rows = [
    [0, 'seconds', 0],
    [59_999, 'seconds', 59],
    [60_000, 'minutes', 1],
    [3_599_999, 'minutes', 59],
    [3_600_000, 'hours', 1],
    [47.9 * 3_600_000, 'hours', 47],
    [48 * 3_600_000, 'days', 2],
  ];
  for (const [ms, word, count] of rows)
    assert.deepEqual(ago(ms), [`timer.ago.${word}`, count], `${ms} ms`);
});

test('the next look: at the full second when seen, at the end when hidden, at most a minute away', () => {
  const now = at('10:13:50.250');
  assert.equal(nextCheck([timer], true, now), 750);
  assert.equal(nextCheck([timer], false, now), 9_750);
  assert.equal(nextCheck([timer], false, at('09:00:00.000')), 60_000);
  assert.equal(nextCheck([timer], true, at('10:14:03.000')), 1_000, 'says how long ago');
  assert.equal(nextCheck([timer], false, at('10:14:03.000')), 60_000);
  const other = { until: '2026-11-25T10:13:52.000Z' };
  assert.equal(nextCheck([timer, other], false, now), 1_750, 'the earlier of two');
});
