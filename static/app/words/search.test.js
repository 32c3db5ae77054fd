import assert from 'node:assert/strict';
import { test } from 'node:test';
import { plain, search } from './search.js';

test('digits are found in whatever script they are typed', () => {
  const list = ['Halvar 1940 10W-40', 'Torrek 440'].map((name) => ({ name, text: plain(name) }));
  for (const typed of [
    '١٩٤٠',
    '۱۹۴۰',
    '१९४०',
    '১৯৪০',
    '１９４０',
    '𝟏𝟗𝟒𝟎',
    '၁၉၄၀',
    '𝟙𝟡𝟜𝟘',
    '١٠w-٤٠',
  ])
    assert.deepEqual(
      search(list, typed).map(({ name }) => name),
      ['Halvar 1940 10W-40'],
      typed,
    );
});

test('each sign of each script that has digits is the digit that it is', () => {
  let scripts = 0;
  for (let at = 0x80, last = 0; at <= 0x10ffff; at++) {
    if (!/\p{Nd}/u.test(String.fromCodePoint(at))) continue;
    if (at < last + 10) continue;
    [last, scripts] = [at, scripts + 1];
    const digits = Array.from({ length: 10 }, (_, n) => String.fromCodePoint(at + n)).join('');
    assert.equal(plain(digits), '0123456789', digits);
  }
  assert.ok(scripts > 60, String(scripts));
});
