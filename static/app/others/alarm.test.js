import assert from 'node:assert/strict';
import { beforeEach, mock, test } from 'node:test';

const listeners = {};
globalThis.document = {
  visibilityState: 'visible',
  addEventListener: (name, act) => (listeners[name] = act),
};

let shakes;
let tones;
const param = { connect() {}, disconnect: () => (tones = 0), start() {}, stop() {} };
globalThis.AudioContext = class {
  state = 'running';
  currentTime = 0;
  destination = {};
};
globalThis.GainNode = function () {
  return { ...param };
};
globalThis.OscillatorNode = function () {
  tones++;
  return { ...param };
};
Object.defineProperty(globalThis, 'navigator', {
  value: { vibrate: () => shakes++ },
  configurable: true,
});

mock.timers.enable({ apis: ['setTimeout', 'Date'], now: Date.parse('2026-11-25T10:09:00.000Z') });
const { alarm } = await import('./alarm.js');
const { arm, armed } = await import('../phone/bell.js');

const end = '2026-11-25T10:14:00.000Z';
let told;
const listener = {
  tick: () => told.push('tick'),
  soon: ({ id }) => told.push(`soon ${id}`),
  over: ({ id }) => told.push(`over ${id}`),
};
const serious = () => told.filter((line) => line !== 'tick');

/** Lets time pass second by second: a longer tick shows every timer its end as the time. */
function pass(ms) {
  for (let left = ms; left > 0; left -= 1000) mock.timers.tick(Math.min(left, 1000));
}

beforeEach(() => {
  alarm.follow('job', [], listener);
  alarm.follow('other', [], listener);
  [told, shakes, tones] = [[], 0, 0];
  document.visibilityState = 'visible';
  mock.timers.setTime(Date.parse('2026-11-25T10:09:00.000Z'));
});

test('a timer is told a minute before its end, rings once at it, and stays over', () => {
  alarm.follow('job', [{ id: 'a', until: end }], listener);
  pass(239_000);
  assert.deepEqual(serious(), []);
  pass(1_000);
  assert.deepEqual(serious(), ['soon a']);
  pass(59_000);
  assert.equal(shakes, 0);
  pass(1_000);
  pass(600_000);
  assert.deepEqual(serious(), ['soon a', 'over a']);
  assert.equal(shakes, 1);
});

test('hidden, the page wakes for the end and not for each second', () => {
  document.visibilityState = 'hidden';
  alarm.follow('job', [{ id: 'b', until: end }], listener);
  pass(300_000);
  assert.deepEqual(serious(), ['soon b', 'over b']);
  assert.ok(told.length < 15, `${told.length} looks in five minutes`);
});

test('a page that was away rings when it comes back, unless that is long past', () => {
  document.visibilityState = 'hidden';
  alarm.follow('job', [{ id: 'c', until: end }], listener);
  mock.timers.setTime(Date.parse('2026-11-25T10:14:30.000Z')); // frozen: nothing ran
  listeners.visibilitychange();
  assert.deepEqual([serious().at(-1), shakes], ['over c', 1]);
  mock.timers.setTime(Date.parse('2026-11-25T18:00:00.000Z'));
  alarm.follow('job', [{ id: 'd', until: end }], listener);
  assert.equal(shakes, 1, 'the screen says it, the bell is still');
});

test('only after a tap there is a tone, and an answer ends it', () => {
  alarm.follow('job', [{ id: 'e', until: end }], listener);
  assert.equal(armed(), false);
  listeners.click();
  assert.equal(armed(), true);
  pass(300_000);
  assert.ok(tones > 0);
  alarm.follow('job', [], listener);
  assert.equal(tones, 0);
});

test('two jobs: each tells its own, and one answered leaves the other', () => {
  arm();
  alarm.follow('job', [{ id: 'f', until: end }], listener);
  alarm.follow('other', [{ id: 'g', until: '2026-11-25T10:10:00.000Z' }], listener);
  pass(60_000);
  assert.deepEqual(serious(), ['over g']);
  alarm.follow('other', [], listener);
  pass(240_000);
  assert.deepEqual(serious(), ['over g', 'soon f', 'over f']);
});

test('an end that is no time rings nothing and stops nothing', () => {
  alarm.follow('job', [{ id: 'h', until: '9999-12-31T23:59:60.000Z' }], listener);
  pass(120_000);
  assert.deepEqual([serious(), shakes], [[], 0]);
  assert.ok(told.length < 10, 'it does not spin');
});
