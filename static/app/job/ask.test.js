import assert from 'node:assert/strict';
import { test } from 'node:test';
import { keeps } from './ask.js';

const step = { id: 'tighten-drain', asks: [{ what: 'torque', of: 'drain', unit: 'N·m' }] };

for (const [typed, want] of [
  ['31', '31 N·m'],
  [' 30–34 ', '30–34 N·m'],
  ['23 lbf·ft', '23 lbf·ft'],
  ['28 Nm', '28 Nm'],
  ['٣١', '٣١ N·m'],
])
  test(`“${typed}” is kept as ${want}, says the large button`, () => {
    const control = { drafts: new Map([['ask-tighten-drain-torque-drain', typed]]) };
    assert.equal(keeps({ state: { readings: [] } }, step, control), want);
  });
