// The own books: old oil, a shelf and torque wrenches, and what a job puts into them; all
// of it without a network.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { read, utils } from 'xlsx';
import { bookFacts, drainedJob } from './book-facts.js';
import { chooseSmallPicture } from './choose-file.js';
import { comesTo } from './comes-to.js';
import { download } from './download.js';
import { goTo, plant, plantIn, plantSetting, stored } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { openWithoutServer } from './open-site.js';
import { patience } from './patience.js';
import { untilState } from './page.js';
import { chooseFrom, seen, tap, tapText, type, typed, untilSeen } from './person.js';
import { words } from './words.js';

/** The page of somebody who keeps books, with those facts and jobs in its store. */
async function openBooks(t, facts = [], jobs = []) {
  const page = await openWithoutServer(t);
  await plantSetting(page, 'books', true);
  await plantIn(page, 'facts', ...facts);
  for (const [job, events] of jobs) await plant(page, job, events);
  await page.reload();
  await untilState(page, 'ready');
  return page;
}

/** What is written in a book, in its order. */
const written = async (page, book) =>
  (await stored(page, 'facts')).filter((fact) => fact.book === book).sort((a, b) => a.seq - b.seq);

/** Unfolds all that is folded in. */
const unfold = (page) =>
  page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));

test('a rider meets no books, and who asks for them finds them in the settings', async (t) => {
  const page = await openWithoutServer(t);
  await goTo(page, '#/settings');
  assert.ok(!(await seen(page)).includes(words('settings.books.open')));
  await tapText(page, words('settings.books.write'));
  await tap(page, words('settings.books.open'), 'link');
  await untilSeen(page, words('books.wrenches.how'));
});

test('old oil: a can is filled, warns, and is handed in with its receipt; the year is a table', async (t) => {
  const page = await openBooks(t);
  await goTo(page, '#/books/oil');
  await type(page, words('books.oil.name'), 'Blue can');
  await untilSeen(page, words('draft.written'));
  await page.reload();
  await untilSeen(page, words('draft.written'));
  await comesTo(() => typed(page, words('books.oil.name')), 'Blue can', 'it is there again');
  await type(page, words('books.oil.size'), '5 L');
  await tap(page, words('books.keep'));
  await untilSeen(page, words('can.empty'));
  await tapText(page, words('books.oil.pour'));
  await type(page, words('books.oil.volume'), 'some');
  await tap(page, words('books.oil.pour-in'));
  await untilSeen(page, words('finding.not-a-number', { text: 'some' }));
  await type(page, words('books.oil.volume'), '4,6 L');
  await tap(page, words('books.oil.pour-in'));
  await untilSeen(page, words('can.nearly-full'));
  await untilSeen(page, words('books.oil.holds', { holds: '4.6 L', size: '5 L' }));

  await tapText(page, words('books.oil.hand-in'));
  await type(page, words('books.oil.where'), 'Yard');
  await chooseSmallPicture(page, 'input[id^=receipt-choose]');
  await untilSeen(page, words('books.oil.receipt.chosen'));
  await tap(page, words('books.oil.handed-in'));
  await untilSeen(page, words('books.oil.years'));
  await page.waitForSelector('img.receipt', { timeout: patience() });
  const [photo] = await stored(page, 'photos');
  const [can, , handed] = await written(page, 'oil');
  assert.deepEqual([photo.job, photo.id, handed.text], [can.of, handed.id, 'Yard']);

  await goTo(page, `#/books/oil/${new Date().getFullYear()}`);
  await untilSeen(page, words('books.oil.sum', { kind: '@waste.engine' }));
  const file = await download(page, await temporaryFolder(t), words('books.csv'));
  const [head, row] = utils.sheet_to_json(read(file.text, { type: 'string' }).Sheets.Sheet1, {
    header: 1,
  });
  assert.equal(head.length, 5);
  assert.deepEqual(row.slice(1), [words('waste.engine'), 4.6, 'Yard', 'Blue can']);

  // What was wrong is taken back, and the can is full again.
  await goTo(page, '#/books/oil');
  await unfold(page);
  await tapText(page, words('books.undo'));
  await untilSeen(page, words('books.oil.holds', { holds: '4.6 L', size: '5 L' }));
});

test('a job puts into the books what it drained and used, once', async (t) => {
  const page = await openBooks(t, bookFacts(), [drainedJob()]);
  await goTo(page, '#/books/oil');
  await untilSeen(page, words('books.oil.waiting'));
  await goTo(page, '#/record/drained-job');
  await tap(page, words('record.books'), 'link');
  await untilSeen(page, words('books.oil.pour-in'));
  await tap(page, words('books.oil.pour-in'));
  await untilSeen(page, words('books.oil.all-in'));
  await tap(page, words('books.shelf.count-down'));
  await untilSeen(page, words('shelf-line.done'));
  await tap(page, words('books.wrenches.use.of', { name: 'Long red one' }));
  await untilSeen(page, words('books.wrenches.noted'));

  const oil = (await written(page, 'oil')).find((fact) => fact.job === 'drained-job');
  assert.deepEqual([oil.value, oil.job, oil.signs.circuit], ['2.3 L', 'drained-job', 'engine']);
  await goTo(page, '#/books/shelf');
  await untilSeen(page, '1.6 L');
  await goTo(page, '#/books/job/drained-job');
  await untilSeen(page, words('books.oil.all-in'));
  assert.ok(!(await seen(page)).includes(words('books.oil.pour-in')), 'it is proposed once');
});

test('the shelf: a thing is written down, and what open jobs need is held against it', async (t) => {
  const [job, events] = drainedJob();
  const open = [{ ...job, id: 'open-job', summary: {} }, events.slice(0, 1)];
  const page = await openBooks(t, [], [open]);
  await goTo(page, '#/books/shelf');
  await type(page, words('books.shelf.name'), 'Red bottles');
  await type(page, words('books.shelf.grade'), 'thick');
  await tap(page, words('books.keep'));
  await untilSeen(page, words('finding.unknown-grade', { text: 'thick' }));
  await type(page, words('books.shelf.grade'), '10w40');
  await type(page, words('books.shelf.marks'), 'JASO MA2, API SL');
  await type(page, words('books.shelf.bottle'), '1 L');
  await type(page, words('books.shelf.left'), '2 L');
  await tap(page, words('books.keep'));
  await untilSeen(page, words('books.shelf.open'));
  await goTo(page, '#/books/list');
  await untilSeen(page, words('books.list.missing'));
  await untilSeen(page, words('books.list.lacks', { much: '0.5 L' }));
  await chooseFrom(page, '#list-add', job.card.id);
  await untilSeen(page, words('books.list.drop'));
  await untilSeen(page, '3 L'); // what a second bike needs is missing whole
  await page.reload();
  await untilSeen(page, words('books.list.drop'));
  await tap(page, words('books.list.drop'));
  await untilSeen(page, new RegExp(`${words('books.list.missing')} 0.5 L`));
});

test('a torque wrench that is found wrong marks the job it was used for', async (t) => {
  const [job, events] = drainedJob();
  const page = await openBooks(t, bookFacts('drained-job'), [[job, events]]);
  await goTo(page, '#/books/wrenches');
  await untilSeen(page, words('wrench.good'));
  await tapText(page, words('books.wrenches.check'));
  await untilSeen(page, words('finding.mass-falls'));
  await type(page, words('books.wrenches.readings'), '46 N·m');
  await page.evaluate(() => document.activeElement.blur());
  await page.evaluate((name) => {
    const [button] = [...document.querySelectorAll('details[open] form button')].filter(
      (b) => b.textContent.trim() === name,
    );
    button.click();
  }, words('books.keep'));
  await untilSeen(page, words('wrench.wrong'));
  await untilSeen(page, words('wrench-doubt.since-good'));
  await tapText(page, words('wrench-doubt.since-good'));
  await untilSeen(page, words('record.books'));
  await untilSeen(page, words('finding.wrench-wrong.do'));
});
