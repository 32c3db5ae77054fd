// What is typed in any field of a job, of the editor of cards and of a bill comes back
// after the browser was killed, is marked where it stands, and goes once it is kept.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { comesTo } from './comes-to.js';
import { tapAt } from './finger.js';
import {
  goTo,
  plant,
  plantIn,
  plantSetting,
  planOf,
  startJob,
  stored,
  untilStep,
} from './job-page.js';
import { temporaryFolder } from './launch.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { seen, tap, type, untilSeen } from './person.js';
import { killBrowser, startAgain, visitOnce } from './restart.js';
import { sampleJobs } from './sample-jobs.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const { faults } = JSON.parse(
  readFileSync(new URL('../../../specs/faults.json', import.meta.url), 'utf8'),
);

/** Runs in the page: types into every field of the screen, and says what stands in each. */
const typeAll = (address, chosenToo) => {
  const fields = [...document.querySelectorAll('main :is(input, textarea, select)')].filter(
    ({ type, id }) =>
      !['radio', 'checkbox', 'file', 'search'].includes(type) &&
      (chosenToo || type !== 'select-one') &&
      !/^photo-|^bill-add/.test(id),
  );
  const contents = {};
  for (const [n, field] of fields.entries()) {
    if (field.type === 'select-one') field.selectedIndex = field.options.length - 1;
    else if (field.type === 'range')
      field.value = String(Number(field.min) + Number(field.step) * (3 + (n % 2)));
    else field.value = `text ${n} 😀`;
    const kind = field.type === 'select-one' ? 'change' : 'input';
    field.dispatchEvent(new Event(kind, { bubbles: true }));
    contents[`${address} ${field.id}`] = field.value;
  }
  return contents;
};

/** Runs in the page: what stands in the fields of the screen. */
const readAll = (address) =>
  Object.fromEntries(
    [...document.querySelectorAll('main :is(input, textarea, select)')].map(({ id, value }) => [
      `${address} ${id}`,
      value,
    ]),
  );

/** Waits until what was typed is written down: until the store holds no less than the page. */
const untilWritten = (page) =>
  page.waitForFunction(
    (pending) => !document.body.innerText.includes(pending),
    { polling, timeout: patience(5) },
    words('draft.pending'),
  );

/** A phone without a network, with a job, a card of one's own, and bills. */
async function phone(t) {
  const profile = await temporaryFolder(t);
  const url = await visitOnce(t, profile);
  const opened = await startAgain(t, profile, url);
  await opened.page.waitForSelector('h1');
  await plant(opened.page, ...sampleJobs([])[0]);
  await plantSetting(opened.page, 'bills', true);
  await opened.page.reload();
  const again = async () => {
    await killBrowser(opened.browser);
    return startAgain(t, profile, url);
  };
  return { ...opened, again };
}

const only = (contents, names) => Object.fromEntries(names.map((name) => [name, contents[name]]));

/** Types at each of these addresses, kills the browser, and reads there. */
async function survive(t, addresses, { ready = 'h1', chosenToo = true } = {}) {
  const { page, again, complaints } = await phone(t);
  const typed = {};
  for (const address of await addresses(page)) {
    await goTo(page, address);
    await page.waitForSelector(ready);
    Object.assign(typed, await page.evaluate(typeAll, address, chosenToo));
    await untilWritten(page);
  }
  const opened = await again();
  const held = {};
  for (const address of await addresses(opened.page)) {
    await goTo(opened.page, address);
    await opened.page.waitForSelector(ready);
    Object.assign(held, await opened.page.evaluate(readAll, address));
  }
  assert.deepEqual(only(held, Object.keys(typed)), typed);
  assert.deepEqual([...complaints, ...opened.complaints], []);
  return { ...opened, typed };
}

test('every field of a job comes back, and is gone once it is kept', async (t) => {
  const steps = async (page) =>
    (await planOf(page, card)).steps.map(({ id }) => `#/job/open-job/step/${id}`);
  const { page, typed } = await survive(t, steps);
  const names = Object.keys(typed).map((name) => name.split(' ')[1]);
  for (const kind of ['note-', 'ask-', 'level-', 'field-'])
    assert.ok(
      names.some((name) => name.startsWith(kind)),
      `there are fields "${kind}…"`,
    );

  await goTo(page, '#/job/open-job/steps');
  const marks = async () => (await seen(page)).split(words('draft.written')).length - 1;
  await comesTo(marks, (await steps(page)).length, 'each step is marked, for its note');
  await goTo(page, '#/job/open-job/step/look-oil');
  await untilSeen(page, words('draft.written'));
  await untilSeen(page, words('job.drafted'));
  assert.ok(!(await seen(page)).includes(words('job.saved')), 'not all of it is kept');
  const before = new Set((await stored(page, 'drafts')).map(({ key }) => key));
  await tap(page, words('job.note.save'));
  await untilSeen(page, words('job.note.kept'));
  const gone = async () => {
    const now = new Set((await stored(page, 'drafts')).map(({ key }) => key));
    return [...before].filter((key) => !now.has(key));
  };
  assert.deepEqual(await gone(), ['job/open-job/ note-look-oil']);
  await page.waitForFunction(
    (mark) => !document.querySelector('.note').innerText.includes(mark),
    { polling },
    words('draft.written'),
  );
});

test('"Everything is kept" stands only where nothing is typed and not entered', async (t) => {
  const { page } = await phone(t);
  await goTo(page, '#/job/open-job/step/lay-out');
  await untilSeen(page, words('job.saved'));
  await page.evaluate(() => (document.querySelector('details.note').open = true));
  for (const [text, says] of [
    ['wor', 'job.drafted'],
    ['', 'job.saved'],
    ['words', 'job.drafted'],
  ]) {
    const claims = await page.$eval(
      '.note textarea',
      async (field, value, claim) => {
        field.value = value;
        field.dispatchEvent(new Event('input', { bubbles: true }));
        await new Promise((resolve) => setTimeout(resolve, 0));
        return document.querySelector('.awake').innerText.includes(claim);
      },
      text,
      words('job.saved'),
    );
    assert.equal(claims, false, `just typed: "${text}"`);
    await untilSeen(page, words(says));
  }
  await tap(page, words('job.note.save'));
  await untilSeen(page, words('job.saved'));
});

test('the answers about a problem come back in its job, and go with it', async (t) => {
  const { page, again, complaints } = await phone(t);
  const at = (id, more = {}) =>
    `#/trouble/${id}/${encodeURIComponent(JSON.stringify({ ...more, job: 'open-job', step: 'lay-out' }))}`;
  const answered = {};
  const asking = faults.filter(({ asks, hand }) => asks || hand).slice(0, 8);
  for (const { id } of asking) {
    await goTo(page, at(id));
    await page.waitForSelector('main fieldset input');
    await page.evaluate(() => document.querySelector('main fieldset input').click());
    await untilSeen(page, words('draft.written'));
    answered[id] = await page.evaluate(() => location.hash);
  }
  const opened = await again();
  for (const { id } of asking) {
    await goTo(opened.page, at(id));
    await opened.page.waitForFunction((hash) => location.hash === hash, { polling }, answered[id]);
    await opened.page.waitForFunction(
      () => document.querySelector('main fieldset input')?.checked,
      { polling, timeout: patience() },
    );
    await untilSeen(opened.page, words('draft.written'));
  }
  const [{ id }] = asking;
  await goTo(opened.page, '#/job/open-job/step/lay-out');
  await untilSeen(opened.page, words(`fault.${id}`));
  await tap(opened.page, words(`fault.${id}`), 'link');
  await tap(opened.page, words('trouble.keep'));
  await untilSeen(opened.page, words('trouble.kept'));
  const keys = (await stored(opened.page, 'drafts')).map(({ key }) => key);
  assert.ok(!keys.includes(`job/open-job/ problem-${id}`));
  assert.equal(keys.length, asking.length - 1);
  assert.deepEqual([...complaints, ...opened.complaints], []);
});

test('every field of a bill comes back, and is gone once it is kept', async (t) => {
  const { page, typed } = await survive(t, async () => ['#/bill/open-job'], {
    ready: '#bill-text-0',
  });
  assert.ok(Object.keys(typed).length > 15, `${Object.keys(typed)}`);
  assert.ok((await seen(page)).includes(words('bill.unkept')));
  await tap(page, words('bill.keep.estimate'));
  await untilSeen(page, words('bill.kept'));
  assert.deepEqual(await stored(page, 'drafts'), []);
});

test('every field of the editor comes back, is marked, and is entered or dropped by a tap', async (t) => {
  const own = { ...sampleCard('hallowmoor-drover-1360'), id: 'own' };
  const text = JSON.stringify(own);
  const record = { key: 'own', card: own, text, changed: '2026-11-01' };
  let planted = false;
  const addresses = async (page) => {
    if (!planted) await plantIn(page, 'cards', record);
    planted = true;
    return ['#/edit/own'];
  };
  const { page, typed } = await survive(t, addresses, {
    ready: '[name="/make"]',
    chosenToo: false, // what is chosen is entered at once
  });
  const fields = Object.keys(typed).length;
  assert.ok(fields > 40, `${fields} fields`);
  const mark = words('draft.written');
  assert.ok((await seen(page)).split(mark).length > 20, 'they are marked');
  const kept = (await stored(page, 'cards'))[0].card;
  assert.equal(kept.make, own.make, 'nothing was entered by itself');
  const on = (entry, word) =>
    `.field:has([name="${entry}"]) ::-p-aria([name="${words(word)}"][role="button"])`;
  await tapAt(page, on('/make', 'draft.drop'));
  await page.waitForFunction(
    (name) => document.querySelector('[name="/make"]').value === name,
    { polling },
    own.make,
  );
  const typedModel = await page.$eval('[name="/model"]', ({ value }) => value);
  await tapAt(page, on('/model', 'draft.enter'));
  await page.waitForFunction(() => !document.querySelector('.field:has([name="/model"]) .draft'), {
    polling,
  });
  await page.waitForSelector('[aria-busy=false]');
  assert.equal((await stored(page, 'cards'))[0].card.model, typedModel);
});

test('Keep, and Done before it is kept: what was typed is kept once', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, `${card.make} ${card.model}`);
  await type(page, words('ask.odometer'), '12 400 km');
  await page.evaluate(() => {
    document.querySelector('form.ask [type="submit"]').click();
    document.querySelector('.actions .main').click();
  });
  await untilStep(page, 2);
  const kinds = (await stored(page, 'events')).map(({ kind }) => kind).sort();
  assert.deepEqual(kinds, ['done', 'reading']);
});
