// The table, read by a spreadsheet library.
import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import { read, utils } from 'xlsx';
import { coreInNode } from '../../test/core-in-node.js';

let core;

before(async () => {
  core = await coreInNode();
});

const write = (input) => JSON.parse(core('csv', JSON.stringify(input))).ok.text;
const sheet = (text) => {
  const { Sheets, SheetNames } = read(text, { type: 'string' });
  return Sheets[SheetNames[0]];
};

// Words in them: of a mere number the library's own reading of dates makes one.
const risky = [
  '=1+1+cmd',
  '+cmd 49',
  '-cmd(10)',
  '@SUM(A1)',
  '=HYPERLINK("x";"y")',
  '\tcmd',
  ' =cmd',
  '=cmd,2\n=3',
];

test('no text becomes a formula or a number, and all of it is there', () => {
  for (const comma of [false, true]) {
    const text = write({ comma, kinds: ['text', 'number'], cells: risky.flatMap((s) => [s, '1']) });
    const cells = sheet(text);
    for (const [n, want] of risky.entries()) {
      const cell = cells[utils.encode_cell({ r: n, c: 0 })];
      assert.equal(cell.f, undefined, `${want} is a formula`);
      assert.equal(cell.t, 's');
      assert.equal(cell.v, `'${want}`);
    }
  }
});

test('without the apostrophe the library would work the formula out', () => {
  assert.equal(sheet('"=1+1"\r\n').A1.f, '1+1');
});

test('numbers are numbers, in the units of the person', () => {
  const kinds = ['text', 'distance', 'volume'];
  const cells = ['Bike', 'Odometer', 'Poured', 'One, "new"; red', '12400', '-2.5', 'Other', '', ''];
  const metric = sheet(write({ kinds, cells }));
  assert.equal(metric.B1.v, 'Odometer (km)');
  assert.deepEqual([metric.B2.t, metric.B2.v, metric.C2.v], ['n', 12400, -2.5]);
  assert.equal(metric.A2.v, 'One, "new"; red');
  assert.equal(metric.B3, undefined);
  const us = sheet(write({ system: 'us', kinds, cells }));
  assert.deepEqual([us.B1.v, us.B2.v], ['Odometer (mi)', 7705]);
});
