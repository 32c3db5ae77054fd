// What a form refuses is said beside its field, tied to it and read out: on every form that
// can refuse something.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { goTo, plantIn } from './job-page.js';
import { openPhones } from './open-phones.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { chooseFrom, leave, write } from './person.js';
import { openAll } from './screens/on-screen.js';
import { screens } from './screens.js';
import { sampleCard, words } from './words.js';

const at = (address) => (page) => goTo(page, address);

const editor = async (page) => {
  const card = { ...sampleCard('tessaly-corda-570'), id: 'refused' };
  const text = JSON.stringify(card);
  await plantIn(page, 'cards', { key: 'refused', card, text, changed: '2026-11-01' });
  await goTo(page, '#/edit/refused');
};

/**
 * Form -> the way to it, a field in it, and what it can't read; `keep` is the word of the
 * button with which it is entered, where leaving the field doesn't enter it.
 */
const forms = {
  editor: { way: editor, field: '[name="/circuits/0/oilOnly"]', text: '2 parsecs' },
  'editor, a page of a figure that is none': {
    way: editor,
    field: '[name="/bolts/0/torque"]',
    text: 'tight',
  },
  calculation: {
    way: at('#/bench/torque-check'),
    field: '#field-torque',
    text: 'tight',
    keep: 'bench.work',
  },
  'calculation, a row of a list': {
    way: at('#/bench/bottles'),
    field: '.row .field:nth-child(2) input',
    text: 'some',
    keep: 'bench.work',
    before: (page) => page.$eval('details.rows > button', (add) => add.click()),
  },
  reading: {
    way: at('#/job/open-job/step/measure-engine'),
    field: '.asks input[name=value]',
    text: 'a lot',
    keep: 'job.keep',
  },
  odometer: {
    way: at('#/job/open-job/step/identify'),
    field: '.asks input[name=value]',
    text: 'far',
    keep: 'job.keep',
  },
  'job on one page': {
    way: at('#/job/open-job/page'),
    field: '.job-page input:not([type=checkbox], [type=radio])',
    text: 'a lot',
    keep: 'page.keep',
  },
  details: {
    way: at('#/details/tessaly-corda-570'),
    field: '#details-figure-value',
    text: 'a lot',
    keep: 'details.figure.keep',
    before: (page) => chooseFrom(page, '#details-figure-what', 'volume.engine'),
  },
  'visit, arrival': {
    way: screens.visit['visit, just begun'],
    on: 'works for others',
    field: '#visit-odometer',
    text: 'a lot',
    keep: 'visit.arrival.keep',
  },
  bill: {
    way: at('#/bill/open-job'),
    field: '#bill-lines-0-price',
    text: 'dear',
    before: (page) => fill(page, '#bill-currency', 'EUR'),
  },
  'book of old oil': {
    way: screens.books['books of old oil, what was handed in'],
    field: '[id^=book-new][name=value]',
    text: 'a lot',
    keep: 'books.keep',
  },
  'book of the shelf': {
    way: screens.books['books, the shelf'],
    field: '[id^=book-new][name=value]',
    text: 'a lot',
    keep: 'books.keep',
  },
  'book of torque wrenches': {
    way: screens.books['books, torque wrenches'],
    field: '[id^=book-new][name=high]',
    text: 'a lot',
    keep: 'books.keep',
  },
};

/** Runs in the page: how a field stands, and what is read of it. */
const standing = (field) => {
  const [about] = (field.getAttribute('aria-describedby') ?? '').split(' ').filter(Boolean);
  const told = about ? document.getElementById(about) : null;
  return {
    invalid: field.getAttribute('aria-invalid'),
    told: told?.innerText.trim()
      ? 'something'
      : `nothing: ${field.closest('.field, form')?.innerText}`,
    refuses: Boolean(told?.querySelector('[data-grade=refuse]')),
    loud: told?.closest('[role=alert], [role=status], [aria-live]')?.getAttribute('role'),
  };
};

/** Types into a field in place of what stood there, and leaves it. */
async function fill(page, selector, text) {
  await write(page, selector, text);
  await leave(page);
}

let phones;
before(async () => (phones = await openPhones()));
after(() => phones.end());

for (const [name, { way, on = 'in use', field, text, keep, before: first }] of Object.entries(
  forms,
))
  test(`${name}: what is refused is tied to its field and read out`, async () => {
    const page = await phones.phone(on);
    await page.bringToFront();
    await page.setViewport({ width: 360, height: 740 });
    await way(page);
    await page.waitForSelector('main :is(input, textarea)', { timeout: patience() });
    await openAll(page);
    await first?.(page);
    await fill(page, field, text);
    if (keep) await enter(page, field, words(keep));
    await page
      .waitForFunction(
        (of) => document.querySelector(of)?.getAttribute('aria-invalid') === 'true',
        { polling, timeout: patience() },
        field,
      )
      .catch(() => {});
    const stands = await page.$eval(field, standing);
    assert.deepEqual(stands, { invalid: 'true', told: 'something', refuses: true, loud: 'alert' });
    assert.equal(await page.$eval(field, ({ value }) => value), text, 'it is not lost');
  });

/** Taps the button that belongs to a field: in its form, or else on the screen. */
async function enter(page, selector, label) {
  await page.$eval(
    selector,
    (field, want) => {
      const all = [...(field.form ?? document).querySelectorAll('button')];
      const button = all.find(({ innerText }) => innerText.trim() === want);
      if (!button) throw new Error(`no button "${want}": ${all.map((b) => b.innerText)}`);
      button.click();
    },
    label,
  );
}
