// What is beyond the bounds is refused, before it costs time or room.
import assert from 'node:assert/strict';
import { gzipSync } from 'node:zlib';
import { test } from 'node:test';
import fc from 'fast-check';
import { bounds, tooDeep } from './bounds.js';
import { linesOf } from './lines.js';
import { Backup } from './read.js';
import { digestOf, seal } from './seal.js';
import { made } from '../../test/backup-file.js';

const head = JSON.stringify({ format: 'tidysump-backup', version: 2, made });

/** A gzipped and sealed file of this text. */
async function zipped(text) {
  const bytes = new Blob([gzipSync(text, { level: 9 })]);
  return new Blob([bytes, seal(await digestOf(bytes, bytes.size), true)]);
}

/** Reads a file; resolves to how many records there were, and why it was refused. */
async function read(file) {
  let records = 0;
  let seen = 0;
  try {
    const backup = await Backup.open(file);
    for await (const list of backup.records({ see: (bytes) => (seen = bytes) }))
      records += list.length;
  } catch (error) {
    return { records, seen, fault: error.message };
  }
  return { records, seen };
}

const line = (letters) => `{"event":"${'x'.repeat(letters)}"}`;

for (const [name, text, fault] of [
  ['one line', `${head}\n${line(50_000_000)}\n`, 'restore.line-too-long'],
  ['one line without an end', `${head}\n${line(50_000_000)}`, 'restore.line-too-long'],
  ['one line of brackets', `${head}\n${'['.repeat(50_000_000)}\n`, 'restore.line-too-long'],
  [
    'a head of 50 MB',
    `${' '.repeat(50_000_000)}${head}\n`,
    'restore.not-one|restore.line-too-long',
  ],
  [
    'lines of brackets',
    `${head}\n${`${'['.repeat(900_000)}\n`.repeat(60)}`,
    'restore.too-much-unread',
  ],
  [
    'lines of a picture each',
    `${head}\n{"photo":"${'A'.repeat(17_000_000)}"}\n`,
    'restore.line-too-long',
  ],
  [
    'millions of records',
    `${head}\n${'{"photo":{"job":"a","id":"1","what":"","data":""}}\n'.repeat(2_000_001)}`,
    'restore.too-many',
  ],
  ['empty lines', `${head}\n${'\n'.repeat(3_000_000)}`, 'restore.too-much-unread'],
])
  test(`a small gzip of ${name} is refused: ${fault}`, async () => {
    const file = await zipped(text);
    const got = await read(file);
    assert.match(String(got.fault), new RegExp(`^(${fault})$`));
  });

test('a line of brackets costs nothing: no more of it is looked at than may be', () => {
  assert.ok(tooDeep('['.repeat(bounds.depth + 1)));
  assert.ok(!tooDeep('['.repeat(bounds.depth) + ']'.repeat(bounds.depth)));
  assert.ok(tooDeep('{"a":'.repeat(1_000_000)));
});

/** The depth of a value, counted by walking through it. */
const depthOf = (value) =>
  value !== null && typeof value === 'object'
    ? 1 + Math.max(0, ...Object.values(value).map(depthOf))
    : 0;

test('the depth of a text is that of what it says, whatever stands in its strings', () =>
  fc.assert(
    fc.property(
      fc.jsonValue({ maxDepth: 6 }),
      fc.nat(60),
      fc.string({ unit: fc.constantFrom('[', ']', '"', '\\', '{', 'a') }),
      (inner, levels, text) => {
        let value = { [text]: inner, text };
        for (let n = 0; n < levels; n++) value = n % 2 ? { [text]: value } : [text, value];
        assert.equal(tooDeep(JSON.stringify(value)), depthOf(value) > bounds.depth);
      },
    ),
    { numRuns: 1000 },
  ));

test('lines are the same, wherever a stream is cut', async () => {
  const lines = async (text, zip) => {
    const list = [];
    const file = new Blob([zip ? gzipSync(text) : text]);
    for await (const some of linesOf(file, { zipped: zip, cut: true })) list.push(...some);
    return list;
  };
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.string({ unit: 'grapheme', maxLength: 20 }), { maxLength: 8 }),
      fc.boolean(),
      async (parts, zip) => {
        const text = parts.map((part) => `${part.replaceAll('\n', '').repeat(4000)}\n`).join('');
        const want = text.split('\n').slice(0, -1);
        assert.deepEqual(await lines(text, zip), want);
      },
    ),
    { numRuns: 60 },
  );
});
