// An estimate and a bill: written without a network, kept with the job, printed.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo, plant, planOf, stored } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { polling } from './page.js';
import { printed } from './pdf.js';
import { choose, chooseFrom, leave, seen, tap, untilSeen, write } from './person.js';
import { startAgain, visitOnce } from './restart.js';
import { sampleJobs } from './sample-jobs.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const link = words('record.bill');

/** A job with 3.4 L poured, and another one, in the store of a phone without a network. */
async function phone(t) {
  const profile = await temporaryFolder(t);
  const url = await visitOnce(t, profile);
  const { page, complaints } = await startAgain(t, profile, url);
  await page.waitForSelector('h1');
  const { steps } = await planOf(page, card);
  const poured = {
    id: 'poured',
    time: '2026-11-20T09:00:01.500Z',
    kind: 'reading',
    step: 'pour-engine',
    what: 'poured',
    of: 'engine',
    value: '3,4 l',
  };
  for (const [job, events] of sampleJobs(steps)) await plant(page, job, [...events, poured]);
  return { page, complaints };
}

/** Types into the nth field of that name, in place of what it held, and leaves it. */
async function fill(page, name, text, nth = 0) {
  await write(page, `[name="${name}"]`, text, nth);
  await leave(page);
}

const openBill = async (page, job) => {
  await goTo(page, `#/bill/${job}`);
  await untilSeen(page, words('bill.lines'));
};

const fillIn = async (page, prices) => {
  for (const [n, price] of prices.entries()) await fill(page, 'price', price, n);
};

async function keep(page, what) {
  await untilSeen(page, words('bill.unkept'));
  await tap(page, words(`bill.keep.${what}`));
  const gone = (text) => !document.body.innerText.includes(text);
  await page.waitForFunction(gone, { polling }, words('bill.unkept'));
}

test('an estimate, then the bill: worked out, kept and printed without a network', async (t) => {
  const { page, complaints } = await phone(t);

  await t.test('hidden until somebody writes bills', async () => {
    await goTo(page, '#/record/closed-job');
    assert.ok(!(await seen(page)).includes(link));
    await goTo(page, '#/settings');
    await choose(page, words('settings.bills.write'));
    await goTo(page, '#/record/closed-job');
    await tap(page, link, 'link');
    await untilSeen(page, words('bill.lines'));
  });

  await t.test('the estimate has the lines of the plan, and is kept', async () => {
    await choose(page, words('bill.what.estimate'));
    await fill(page, 'currency', 'EUR');
    await fillIn(page, ['14.00', '12', '1,50', '70', '3.00']);
    await fill(page, 'count', '2.5 L');
    await fill(page, 'count', '42 min', 3);
    await chooseFrom(page, '[name="prices"]', 'net');
    await fill(page, 'tax', '20 %', 5); // after those of the lines
    await fill(page, 'seller', 'Yard Nine\n12 Mill Lane');
    // 2.5 · 14.00 + 12.00 + 1.50 + 0.7 · 70.00 + 3.00 = 100.50; with 20 % 120.60.
    await untilSeen(page, /Total .?120\.60/);
    await keep(page, 'estimate');
  });

  await t.test('the bill begins as the estimate, with the oil really poured', async () => {
    await choose(page, words('bill.what.bill'));
    // 3.4 · 14.00 and the rest: 113.10; with 20 % 135.72, which is 12.5 % more.
    await untilSeen(page, /Total .?135\.72/);
    await untilSeen(page, words('finding.over-estimate', { share: '12.5' }));
    await chooseFrom(page, '[name="cash"]', '0.05');
    await untilSeen(page, /Total .?135\.70/);
  });

  await t.test('a wrong price is told beside its field, and where one types stays', async () => {
    await fill(page, 'price', 'twelve', 1);
    const sentence = words('finding.no-plain-number', { text: 'twelve' });
    await untilSeen(page, sentence);
    const beside = await page.$$eval('[name="price"]', (all) =>
      all.map((e) => e.closest('.field').querySelector('.finding')?.textContent.trim() ?? ''),
    );
    assert.deepEqual(
      beside.map((text) => text.includes(sentence)),
      [false, true, false, false, false],
    );
    assert.ok(!(await seen(page)).includes(words('paper.print')), 'nothing wrong is printed');
    await fill(page, 'price', '12', 1);
    await untilSeen(page, /Total .?135\.70/);
  });

  await t.test('what the bill has to show and does not is said before it is printed', async () => {
    const lacks = () => page.$$eval('.lacks .finding', (all) => all.map((one) => one.textContent));
    const said = (codes) =>
      page.waitForFunction(
        (wanted) => document.querySelectorAll('.lacks .finding').length === wanted,
        { polling },
        codes.length,
      );
    const missing = ['bill-no-customer', 'bill-no-number'];
    await said(missing);
    for (const [n, text] of (await lacks()).entries())
      assert.ok(text.includes(words(`finding.${missing[n]}`)), text);
    await fill(page, 'customer', 'The third gate');
    await said(['bill-no-number']);
  });

  await t.test('the printed sheet has all of it, on one page of A4 or Letter', async () => {
    await fill(page, 'number', '2026-17');
    await page.waitForFunction(() => !document.querySelector('.lacks'), { polling });
    await untilSeen(page, 'Bill 2026-17');
    for (const format of ['A4', 'Letter']) {
      const sheets = await printed(t, page, format);
      assert.equal(sheets.length, 1, format);
      for (const text of ['Yard Nine', 'Bill 2026-17', '47.60', '49.00', '22.62', '135.70'])
        assert.ok(sheets[0].includes(text), `${format}: ${text} in ${sheets[0]}`);
      assert.match(sheets[0], /Tax, 20 ?% on .?113\.10/);
      for (const word of ['bill.keep.bill', 'nav.settings', 'bill.ask.price'])
        assert.ok(!sheets[0].includes(words(word)), `${word} in ${sheets[0]}`);
    }
  });

  await t.test('kept as an event of the job, and there again after a reload', async () => {
    await keep(page, 'bill');
    const papers = (await stored(page, 'events')).filter(({ kind }) => kind === 'bill');
    assert.deepEqual(papers.map(({ what }) => what).sort(), ['bill', 'estimate']);
    assert.ok(papers.every(({ job }) => job === 'closed-job'));
    await page.reload();
    await openBill(page, 'closed-job');
    await untilSeen(page, /Bill 2026-17/);
    await untilSeen(page, /Total .?135\.70/);
  });

  await t.test('the record of the job says what it came to', async () => {
    await goTo(page, '#/record/closed-job');
    await untilSeen(page, /Bill: .?135\.70/);
  });

  await t.test('the next bill knows the prices, the labour and the seller', async () => {
    await openBill(page, 'ready-job');
    const typed = await page.$$eval('[name="price"]', (all) => all.map(({ value }) => value));
    assert.deepEqual(typed, ['14.00', '12', '1,50', '70', '3.00']);
    await untilSeen(page, /Total .?135\.70/);
    await untilSeen(page, 'Yard Nine');
  });
  assert.deepEqual(complaints, []);
});
