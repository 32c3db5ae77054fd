// The table, read by a spreadsheet library.
import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import { read, utils } from 'xlsx';
import { row } from './csv.js';
import { loadLimits } from '../core/limits.js';
import { loadWords, t } from '../words/catalogue.js';
import { defaultLanguage, entriesOf } from '../../test/catalogue.js';
import { coreInNode } from '../../test/core-in-node.js';
import { FakeWorker } from '../../test/fake-worker.js';

let core;

before(async () => {
  core = await coreInNode();
  globalThis.document = { visibilityState: 'hidden' };
  globalThis.fetch = async () => Response.json(entriesOf(defaultLanguage));
  await loadWords(defaultLanguage);
  globalThis.Worker = function () {
    return new FakeWorker(({ op, input }) => ({ output: core(op, input) }));
  };
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

/** The core's answer in a row's place. */
const answerOf = (text) => ({ summary: { phase: 'closed' }, row: { notes: [text], done: 3 } });
const jobOf = (started) => ({ name: 'Corda', started });

test('a text that is cut is cut between characters, says so, and never keeps a row from being written', async () => {
  await loadLimits();
  for (let before = 4780; before < 5010; before++) {
    const cells = row(jobOf('2026-11-20T10:00:00.000Z'), answerOf(`${'x'.repeat(before)}👩‍🔧 end`));
    const note = cells.at(-1);
    assert.ok(note.isWellFormed(), `cut within an emoji after ${before} letters`);
    if (before + 9 > 5000) assert.ok(note.endsWith(t('csv.cut')), `${before}: ${note.slice(-60)}`);
    const answer = JSON.parse(
      core('csv', JSON.stringify({ kinds: cells.map(() => 'text'), cells })),
    );
    assert.ok(answer.ok, `${before}: ${JSON.stringify(answer.findings)}`);
  }
});

test('what is told of its bike stands behind the name of the model', () => {
  const cells = row(jobOf('2026-11-20T10:00:00.000Z'), answerOf(''), ['Blue', 'KX 12']);
  assert.deepEqual(cells.slice(1, 4), ['Corda', 'Blue', 'KX 12']);
});

test('a job that was only to get home is told from an oil change', () => {
  const state = (summary) => row(jobOf('2026-11-20T10:00:00.000Z'), { summary, row: {} })[2];
  assert.equal(state({ phase: 'closed' }), t('record.closed'));
  assert.equal(state({ phase: 'closed', home: true }), `${t('record.closed')}, ${t('log.home')}`);
});

test('the day is the one that the phone has', () => {
  const zone = process.env.TZ;
  try {
    for (const [tz, want] of [
      ['Pacific/Auckland', '2026-11-21'],
      ['America/Los_Angeles', '2026-11-20'],
    ]) {
      process.env.TZ = tz;
      assert.equal(row(jobOf('2026-11-21T02:00:00.000Z'), answerOf(''))[0], want, tz);
    }
  } finally {
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  }
  assert.equal(row(jobOf('whenever'))[0], 'whenever');
});

test('a note is what was written, also where it looks like the id of a word', () => {
  const note = '@role.engine';
  const cells = row(
    { name: 'Corda', started: '2026-11-24T10:00:00.000Z' },
    { row: { notes: [note] } },
  );
  assert.ok(cells.includes(note), cells.join(' | '));
});
