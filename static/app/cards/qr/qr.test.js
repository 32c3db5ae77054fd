import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { fromBase45, toBase45 } from './base45.js';
import { Codes, codesOf, mostCodes } from './codes.js';
import { deflate, inflate } from './deflate.js';

// The examples of RFC 9285, sections 4.3 and 4.4.
const examples = {
  AB: 'BB8',
  'Hello!!': '%69 VD92EX0',
  'base-45': 'UJCLQE7W581',
  'ietf!': 'QED8WEX0',
};

for (const [plain, coded] of Object.entries(examples)) {
  test(`base45 of "${plain}"`, () => {
    assert.equal(toBase45(Buffer.from(plain)), coded);
    assert.equal(Buffer.from(fromBase45(coded)).toString(), plain);
  });
}

for (const text of ['GGW', ':::', 'A', 'BB8A', 'bb8', 'B_8', '::']) {
  test(`"${text}" is no base45`, () => assert.equal(fromBase45(text), undefined));
}

test('all bytes come back, of any number', () => {
  const all = Uint8Array.from({ length: 257 }, (_, n) => n);
  for (let size = 0; size <= all.length; size++) {
    const bytes = all.slice(all.length - size);
    assert.deepEqual(fromBase45(toBase45(bytes)), bytes);
  }
});

/** A text that deflates badly, so that its codes are many. */
function text(size, seed = 1) {
  let out = '';
  for (let n = seed; out.length < size; n++) out += ((n * 2654435761) % 4294967296).toString(36);
  return `${out.slice(0, size)}é€😀`;
}

/** What becomes of codes read one after the other: the faults, and the text. */
async function read(codes) {
  const collected = new Codes();
  const faults = codes.map((code) => collected.add(code)).filter(Boolean);
  return { faults, text: collected.complete ? (await collected.text(1 << 20)).text : null };
}

test('codes come together in any order, and read twice', async () => {
  const codes = await codesOf(text(2000));
  assert.ok(codes.length > 2, `${codes.length} codes`);
  const order = [...codes.toReversed(), codes[0], codes[1]];
  assert.deepEqual(await read(order), { faults: [], text: text(2000) });
});

test('progress tells which codes are there', async () => {
  const codes = await codesOf(text(2000));
  const collected = new Codes();
  collected.add(codes[2]);
  collected.add(codes[0]);
  assert.deepEqual(
    [collected.got, collected.of, collected.complete],
    [[1, 3], codes.length, false],
  );
});

test('a code holds letters only that a QR code packs closest', async () => {
  for (const code of await codesOf(text(2000))) assert.match(code, /^[0-9A-Z $%*+\-./:]{1,520}$/);
});

test('a code of another card is told, and does no harm', async () => {
  const [codes, others] = [await codesOf(text(2000)), await codesOf(text(2000, 7))];
  assert.deepEqual(await read([codes[0], others[1], ...codes.slice(1)]), {
    faults: ['qr.other'],
    text: text(2000),
  });
});

test('what is no code of ours is told', async () => {
  const [code] = await codesOf(text(2000));
  const wrong = {
    'https://example.org/': 'qr.not-ours',
    '': 'qr.not-ours',
    'TSC1:12345678:0/3:A': 'qr.not-ours',
    'TSC1:12345678:4/3:A': 'qr.damaged',
    [code.replace('TSC1', 'TSC2')]: 'qr.newer',
    [code.replace('TSC1', 'TSB2')]: 'qr.newer',
    [code.replace('TSC1', 'TSD1')]: 'qr.not-ours',
  };
  for (const [made, fault] of Object.entries(wrong))
    assert.equal(new Codes().add(made), fault, made);
});

test('a damaged code is never taken for the card', async () => {
  const codes = await codesOf(text(2000));
  for (const at of [20, 100, codes[0].length - 1]) {
    const letter = codes[0][at] === 'A' ? 'B' : 'A';
    const damaged = codes[0].slice(0, at) + letter + codes[0].slice(at + 1);
    assert.equal((await read([damaged, ...codes.slice(1)])).text, undefined);
    assert.deepEqual((await read([codes[0], damaged])).faults, ['qr.damaged']);
  }
});

test('a text that would need too many codes gets none', async () => {
  assert.equal(await codesOf(text(40_000)), undefined);
  assert.ok((await codesOf(text(8000))).length <= mostCodes);
});

test('what unfolds beyond all bounds is given up', async () => {
  const bomb = await deflate('x'.repeat(10_000_000));
  assert.ok(bomb.length < 20_000);
  await assert.rejects(inflate(bomb, 1 << 20), RangeError);
});

test('codes of which what is inside unfolds beyond all bounds say so', async () => {
  const collected = new Codes();
  for (const code of await codesOf('x'.repeat(5_000_000), 'bike')) collected.add(code);
  assert.ok(collected.complete);
  assert.deepEqual(await collected.text(1 << 20), { fault: 'qr.too-large' });
});

const kind = fc.constantFrom('card', 'bike');

test('any text comes back from its codes, with what it is of, read in any order', async () => {
  const made = fc.record({ text: fc.string({ unit: 'grapheme', maxLength: 4000 }), kind });
  const order = fc.infiniteStream(fc.nat());
  await fc.assert(
    fc.asyncProperty(made, order, async ({ text, kind }, numbers) => {
      const codes = await codesOf(text, kind);
      const collected = new Codes();
      const left = [...codes];
      for (const number of numbers) {
        if (!left.length) break;
        const [code] = left.splice(number % left.length, 1);
        assert.equal(collected.add(code), undefined);
        assert.equal(collected.complete, left.length === 0);
      }
      assert.equal(collected.kind, kind);
      assert.deepEqual(await collected.text(1 << 20), { text });
    }),
    { numRuns: 100 },
  );
});

test('codes of a card and of a bike in one scan: the first goes on, the others are told', async () => {
  const [cards, bikes] = [await codesOf(text(2000)), await codesOf(text(2000), 'bike')];
  for (const [ours, others] of [
    [cards, bikes],
    [bikes, cards],
  ]) {
    const mixed = ours.flatMap((code, n) => [code, others[n]]);
    const want = { faults: others.map(() => 'qr.other'), text: text(2000) };
    assert.deepEqual(await read(mixed), want, `first ${ours[0].slice(0, 5)}`);
  }
});

test('codes that are changed anywhere give the text that was meant, or none', async () => {
  const codes = await codesOf(text(1200), 'bike');
  const change = fc.record({
    code: fc.nat(codes.length - 1),
    at: fc.nat(600),
    put: fc.string({ maxLength: 3 }),
    cut: fc.nat(3),
  });
  await fc.assert(
    fc.asyncProperty(change, async ({ code, at, put, cut }) => {
      const changed = codes.map((whole, n) =>
        n === code ? whole.slice(0, at) + put + whole.slice(at + cut) : whole,
      );
      const { text: got } = await read(changed);
      assert.ok(got === null || got === undefined || got === text(1200), got ?? '');
    }),
    { numRuns: 200 },
  );
});
