// One line at the bench: typed and said, read, answered, and opened as a full form.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { comesTo } from './comes-to.js';
import { goTo } from './job-page.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { heading, seen, tap, tapText, type, typed, untilSeen } from './person.js';
import { voices } from './voices.js';
import { words } from './words.js';

const ready = (page) => page.evaluateOnNewDocument(voices);
const quoted = (text) => words('bench.line.quote', { text });

test('a typed line is read piece by piece, answered, and opens its form filled in', async (t) => {
  const { page, complaints } = await openSite(t);
  await goTo(page, '#/bench');
  await type(
    page,
    words('bench.line'),
    '25 Nm, wrench with 60 mm adapter, scale 10 to 60 Nm, grip 300 mm, quickly',
  );
  await tap(page, words('bench.line.read'));
  await untilSeen(page, words('bench.worked'));
  const text = await seen(page);
  for (const part of [
    words('calc.wrench'),
    '25 N·m',
    quoted('60 mm adapter'),
    quoted('grip 300 mm'),
  ])
    assert.ok(text.includes(part), `${part} in ${text}`);
  await untilSeen(page, words('finding.line-unread', { text: 'quickly' }));
  await untilSeen(page, words('wrench.sets-wide'));

  await tap(page, words('bench.line.form'), 'link');
  await untilSeen(page, words('bench.from'));
  assert.equal(await heading(page), words('calc.wrench'));
  await comesTo(() => typed(page, words('ask.wrench.torque')), '25 N·m');
  await comesTo(() => typed(page, words('ask.wrench.high')), '60 N·m');
  await tap(page, words('nav.back'));
  await untilSeen(page, words('bench.line.form'));
  assert.match(await typed(page, words('bench.line')), /^25 Nm/, 'the line stands there still');
  assert.deepEqual(complaints, []);
});

test('what may be two things is asked for, and one tap says it', async (t) => {
  const { page } = await openSite(t);
  await goTo(page, '#/bench');
  await type(page, words('bench.line'), 'set the wrench to 18 lb');
  await tap(page, words('bench.line.read'));
  const torque = words('ask.wrench.torque');
  await untilSeen(page, words('bench.line.which-unit', { field: torque, text: '18 lb' }));
  await untilSeen(page, words('bench.line.missing'));
  await tapText(page, 'lbf·ft'); // the button, above the list
  await untilSeen(page, words('bench.line.read-as'));
  assert.ok(!(await seen(page)).includes('18 lbf·in'), 'nothing is asked any more');
});

test('a said line is read as a typed one, where the phone listens by itself', async (t) => {
  const { page, complaints } = await openSite(t, ready);
  await goTo(page, '#/bench');
  await tap(page, words('bench.line.say'));
  await untilSeen(page, words('bench.line.listening'));
  await page.waitForFunction(() => globalThis.phone.ears.size === 1, { polling });
  await page.evaluate(() => globalThis.phone.hear('twenty-five newton metres'));
  await untilSeen(page, words('calc.convert'));
  await untilSeen(page, '18.4 lbf·ft');
  await untilSeen(page, words('hands.reading'));
  assert.equal(await page.evaluate(() => globalThis.phone.ears.size), 0, 'it listens no longer');
  assert.deepEqual(complaints, []);
});

test('the answer to a said line is read aloud, that to a typed one is left to a screen reader', async (t) => {
  const { page, complaints } = await openSite(t, ready);
  const live = () => page.$eval('.worked', (element) => element.getAttribute('aria-live'));
  await goTo(page, '#/bench');
  await tap(page, words('bench.line.say'));
  await page.waitForFunction(() => globalThis.phone.ears.size === 1, { polling });
  await page.evaluate(() => globalThis.phone.hear('twenty-five newton metres'));
  await untilSeen(page, words('hands.reading'));
  const said = await page.evaluate(() => globalThis.phone.said);
  for (const part of [words('calc.convert'), '25 newton metres', '18.4 pound-feet'])
    assert.ok(
      said.some((sentence) => sentence.includes(part)),
      `${part} in ${said.join(' | ')}`,
    );
  assert.equal(await live(), 'off', 'a screen reader does not speak at the same time');
  await page.evaluate(() => globalThis.phone.finish());
  await untilSeen(page, words('bench.line.say'));
  assert.equal(await live(), 'off', 'what was read is not read again');

  await type(page, words('bench.line'), '30 Nm');
  await tap(page, words('bench.line.read'));
  await untilSeen(page, '3.06 kgf·m');
  assert.equal(await live(), 'polite');
  assert.deepEqual(await page.evaluate(() => globalThis.phone.said), said, 'nothing more is said');

  await tap(page, words('bench.line.say'));
  await page.waitForFunction(() => globalThis.phone.ears.size === 1, { polling });
  await page.evaluate(() => globalThis.phone.hear('ten newton metres'));
  await tap(page, words('hands.reading'));
  await untilSeen(page, words('bench.line.say'));
  assert.deepEqual(await page.evaluate(() => globalThis.phone.spoken), [], 'a tap ends it');
  assert.deepEqual(complaints, []);
});
