// A bike goes as QR codes to another phone, where it is looked at as a file is.
import 'fake-indexeddb/auto';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { beforeEach, test } from 'node:test';
import fc from 'fast-check';
import { bikeCodes } from './bike-codes.js';
import { Fault } from './bounds.js';
import { readBackup, restore } from './restore.js';
import { Codes, codesOf } from '../cards/qr/codes.js';
import { freshBikes } from '../store/bikes.js';
import { factsOf } from '../store/facts.js';
import { photosOf } from '../store/photos.js';
import * as store from '../store/store.js';
import * as whole from '../store/whole.js';
import { backupOf, sealed } from '../../test/backup-file.js';
import { coreInNode } from '../../test/core-in-node.js';
import { FakeWorker } from '../../test/fake-worker.js';

const ask = await coreInNode();
globalThis.document = { visibilityState: 'hidden' };
globalThis.Worker = function () {
  return new FakeWorker(({ op, input }) => ({ output: ask(op, input) }));
};

beforeEach(() => whole.removeAll());

const card = JSON.parse(
  readFileSync(new URL('../../../specs/cards/tessaly-corda-570.json', import.meta.url), 'utf8'),
);
const most = 8 << 20;
const time = '2026-11-20T10:00:00.000Z';
const fact = (seq, kind, more) => ({
  book: 'bike',
  of: 'twin',
  id: `f${seq}`,
  kind,
  time,
  day: '2026-11-20',
  seq,
  ...more,
});

/** A bike of somebody, with jobs of which each has a photo and notes. */
async function fill({ jobs = 1, notes = ['Quiet engine'] } = {}) {
  await whole.putAll({
    facts: [
      fact(1, 'follows', { value: card.id }),
      fact(2, 'told', { what: 'called', value: 'The green one' }),
      fact(3, 'told', { what: 'owner', value: 'Odile Quarry' }),
    ],
  });
  for (let n = 0; n < jobs; n++) {
    const job = `j${n}`;
    const bench = { system: 'metric', place: 'garage' };
    const record = { id: job, name: 'Tessaly Corda 570', started: time, card, bench, bike: 'twin' };
    const told = notes.map((text, at) => ({ job, id: `${job}-${at}`, time, kind: 'note', text }));
    const photo = { job, id: `${job}-p`, time, kind: 'photo', step: 'look-oil', what: 'pan' };
    const blob = new Blob([Uint8Array.from([255, 216, 1])], { type: 'image/jpeg' });
    await whole.putAll({
      jobs: [{ ...record, summary: {} }],
      events: [...told, photo],
      photos: [{ job, id: photo.id, what: 'pan', blob, bytes: 3 }],
    });
  }
  await freshBikes();
}

/** The text that codes hold, as another phone reads it. */
async function textOf(codes) {
  const collected = new Codes();
  for (const code of codes.toReversed()) assert.equal(collected.add(code), undefined);
  assert.equal(collected.kind, 'bike');
  return (await collected.text(most)).text ?? '';
}

const nothing = { jobs: 0, facts: 0, lines: 0 };
const held = async () => ({
  jobs: (await store.log()).length,
  facts: (await factsOf('bike')).length,
  lines: (await store.bikeRows()).length,
});

test('a bike comes over in codes, without its photos and persons; nothing before it is agreed to', async () => {
  await fill();
  const codes = (await bikeCodes('twin', false, most)) ?? [];
  assert.ok(codes.length > 1 && codes.every((code) => code.startsWith('TSB1:')), `${codes.length}`);
  const text = await textOf(codes);
  assert.equal(text.includes('Odile Quarry'), false);
  await whole.removeAll();

  const review = await readBackup(new Blob([text]));
  assert.deepEqual(await held(), nothing);
  const { tally } = review;
  const added = (kind) => tally.of(kind).added;
  assert.deepEqual(
    ['jobs', 'events', 'facts', 'photos'].map(added),
    [1, 2, 2, 0],
    'what the review says',
  );
  await restore(review);
  assert.deepEqual(await held(), { jobs: 1, facts: 2, lines: 1 });
  assert.equal((await store.bikeRows())[0].called, 'The green one');
  assert.deepEqual(await photosOf('j0'), []);
});

test('what tells of persons goes with it where that was chosen', async () => {
  await fill();
  const text = await textOf((await bikeCodes('twin', true, most)) ?? []);
  assert.ok(text.includes('Odile Quarry'));
});

test('codes read where the bike is already say that nothing is new', async () => {
  await fill();
  const text = await textOf((await bikeCodes('twin', true, most)) ?? []);
  const { tally } = await readBackup(new Blob([text]));
  assert.ok(tally.nothingNew);
});

test('a record that doesn’t fit has no codes', async () => {
  const word = (n) => ((n * 2654435761) % 4294967296).toString(36);
  const notes = Array.from({ length: 400 }, (_, n) =>
    [7, 8, 9, 10, 11, 12].map((by) => word(n * by * 9973)).join(' '),
  );
  await fill({ notes });
  assert.ok((await bikeCodes('twin', false, most)) === undefined);
});

test('a record that folds well has none either, once nobody would unfold it', async () => {
  await fill({ notes: ['a'.repeat(3000)] });
  assert.notEqual(await bikeCodes('twin', false, most), undefined);
  assert.equal(await bikeCodes('twin', false, 3000), undefined);
});

/** What is said of a text that was read from codes; nothing is written. */
async function saidOf(text) {
  const back = await textOf((await codesOf(text, 'bike')) ?? []);
  assert.equal(back, text);
  const said = await readBackup(new Blob([back])).then(
    () => 'read',
    (error) => error instanceof Fault && error.message,
  );
  assert.deepEqual(await held(), nothing);
  return said;
}

test('hostile texts in whole codes are told, and change nothing', async () => {
  const good = await (await backupOf([{ fact: fact(1, 'told', { what: 'called' }) }])).text();
  const cases = [
    [good, 'read'],
    ['', 'restore.not-one'],
    ['hello', 'restore.not-one'],
    ['{"format":"tidysump-cards","version":1,"cards":[]}\n', 'restore.not-one'],
    [good.slice(0, -20), 'restore.damaged'],
    [good.replace('called', 'owner'), 'restore.damaged'],
    [await (await backupOf([], 4)).text(), 'restore.newer'],
    [
      await (await backupOf([`{"fact":{"text":"${'a'.repeat(1_100_000)}"}}`])).text(),
      'restore.line-too-long',
    ],
    [await (await sealed('{"format":"tidysump-backup"}')).text(), 'restore.damaged'],
    [await (await sealed(`${'['.repeat(9000)}`)).text(), 'restore.not-one'],
  ];
  for (const [text, want] of cases) assert.equal(await saidOf(text), want, text.slice(0, 80));
});

test('a backup that is cut or changed anywhere is never taken in from codes', async () => {
  const good = await (await backupOf([{ fact: fact(1, 'told', { what: 'called' }) }])).text();
  const change = fc.record({ at: fc.nat(good.length - 1), put: fc.string({ maxLength: 2 }) });
  await fc.assert(
    fc.asyncProperty(change, async ({ at, put }) => {
      const changed = good.slice(0, at) + put + good.slice(at + 1);
      fc.pre(changed !== good);
      assert.match(String(await saidOf(changed)), /^restore\.(damaged|not-one|newer)$/);
    }),
    { numRuns: 60 },
  );
});
