import assert from 'node:assert/strict';
import { test } from 'node:test';
import { clean, textOf } from './text-of.js';

const page = 'Drain bolt 25 N·m, 60 °C';
const wide = (mark, put, times = 1) => {
  const text = page.repeat(times);
  const bytes = new Uint8Array(2 + text.length * 2);
  bytes.set(mark);
  const view = new DataView(bytes.buffer, 2);
  [...text].forEach((letter, n) => view.setUint16(n * 2, letter.charCodeAt(0), put));
  return bytes;
};

const files = [
  // what it is, its bytes, what is read
  ['UTF-8', new TextEncoder().encode(page), { text: page }],
  ['UTF-8 with a mark in front', new TextEncoder().encode(`\ufeff${page}`), { text: page }],
  ['UTF-16, little end first', wide([0xff, 0xfe], true), { text: page }],
  ['UTF-16, big end first', wide([0xfe, 0xff], false), { text: page }],
  ['of an older program', Uint8Array.from([0x36, 0x30, 0x20, 0xb0, 0x43]), { text: '60 °C' }],
  ['a PDF', new TextEncoder().encode('%PDF-1.7\n%'), { fault: 'manual.is-pdf' }],
  ['a picture', Uint8Array.from([0xff, 0xd8, 0xff, 0, 0, 1]), { fault: 'manual.no-text' }],
  ['a large picture', new Uint8Array(500).fill(1), { fault: 'manual.no-text' }],
  [
    'a large PDF',
    new TextEncoder().encode('%PDF-1.7' + ' '.repeat(500)),
    { fault: 'manual.is-pdf' },
  ],
  ['few signs that are none', new TextEncoder().encode(`${page}\x02`), { text: `${page}\x02` }],
  [
    'cards',
    new TextEncoder().encode('{"format":"tidysump-cards","version":1,"cards":[]}'),
    { fault: 'manual.is-cards' },
  ],
  ['nothing', new Uint8Array(), { fault: 'manual.empty' }],
  ['blanks', new TextEncoder().encode(' \n\t'), { fault: 'manual.empty' }],
  ['too much', new TextEncoder().encode('a'.repeat(101)), { fault: 'manual.too-large' }],
  ['far too much', new TextEncoder().encode('a'.repeat(999)), { fault: 'manual.too-large' }],
  ['as much as goes in', wide([0xff, 0xfe], true, 3), { text: page.repeat(3) }],
];

for (const [name, bytes, want] of files)
  test(`a file: ${name}`, async () => {
    assert.deepEqual(await textOf(new Blob([bytes]), 100), want);
  });

test('half a letter and ends of lines of other systems become what the core counts too', () => {
  assert.equal(clean('a\ud800b\r\nc\rd'), 'a\ufffdb\nc\nd');
});
