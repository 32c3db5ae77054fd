// How days, times, money and numbers are written, and that nothing else writes them.
import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import { defaultLanguage, entriesOf } from '../../test/catalogue.js';
import { loadWords } from './catalogue.js';
import { clock, day, dayText, monthsText, when } from './dates.js';
import { amount, money, percent } from './money.js';
import { size } from './size.js';

before(async (context) => {
  globalThis.document = /** @type {Document} */ ({
    documentElement: { lang: defaultLanguage.tag },
  });
  context.mock.method(globalThis, 'fetch', async () => Response.json(entriesOf(defaultLanguage)));
  await loadWords(defaultLanguage);
});

const plain = (text) => text.replaceAll('\u00a0', ' ');

test('a day has its month as a word, and a time 24 hours', () => {
  const moment = new Date(2026, 10, 8, 14, 5).toISOString();
  assert.equal(plain(day(moment)), '8 Nov 2026');
  assert.equal(plain(when(moment)), '8 Nov 2026, 14:05');
  assert.equal(clock(new Date(2026, 0, 1, 0, 7).toISOString()), '00:07');
});

test('a bare day is that day wherever the phone is', () => {
  const zone = process.env.TZ;
  try {
    for (process.env.TZ of ['Pacific/Kiritimati', 'Pacific/Niue', 'UTC'])
      for (const [bare, want] of [
        ['2027-05-03', '3 May 2027'],
        ['2026-12-31', '31 Dec 2026'],
      ])
        assert.equal(plain(dayText(bare)), want, process.env.TZ);
  } finally {
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  }
});

test('months are written out', () => {
  assert.match(monthsText('2027-03', '2027-05'), /March.*May 2027/);
  assert.equal(plain(monthsText('2027-03')), 'March 2027');
});

test('what is no time stands as it is', () => {
  for (const write of [day, when, clock]) assert.equal(write('some day'), 'some day');
});

test('money and numbers have a point, and no mark between thousands', () => {
  for (const [minor, digits, want] of [
    [270000, 2, '2700.00 EUR'],
    [-1234567, 2, '-12345.67 EUR'],
    [1500, 0, '1500 EUR'],
    [undefined, 2, '0.00 EUR'],
    [5, 3, '0.005 EUR'],
  ])
    assert.equal(plain(money(minor, { currency: 'EUR', digits })), want);
  assert.equal(plain(amount(12345.6, 'km')), '12345.6 km');
  assert.equal(amount(0.1 + 0.2), '0.3');
  assert.equal(plain(percent(19)), '19 %');
  assert.equal(plain(size(1_234_567)), '1.2 MB');
  assert.equal(plain(size(1_234_567_890)), '1.2 GB');
  assert.equal(plain(size(3)), '0.1 MB');
});
