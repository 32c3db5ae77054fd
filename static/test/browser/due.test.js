// When the oil is due again: from two jobs on one bike, without a network.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import ICAL from 'ical.js';
import { read, utils } from 'xlsx';
import { download } from './download.js';
import { changeOfOil, dueJobs } from './due-jobs.js';
import { goTo, plant } from './job-page.js';
import { openBrowser, startServer, temporaryFolder } from './launch.js';
import { polling, untilState } from './page.js';
import { choose, seen, tap, tapText, under, untilSeen } from './person.js';
import { words } from './words.js';
import { defaultLanguage } from '../catalogue.js';

const bike = '#/bike/tessaly-corda-570';

/** The page with those jobs in its store, its server gone. */
async function openOffline(t, jobs) {
  const server = await startServer(t);
  const browser = await openBrowser(t);
  const page = await browser.newPage();
  await page.setViewport({ width: 360, height: 740 });
  await page.goto(server.url);
  await untilState(page, 'ready');
  await page.waitForFunction(() => navigator.serviceWorker.controller, { polling });
  for (const [job, events] of jobs) await plant(page, job, events);
  await server.stop();
  await page.reload();
  await untilState(page, 'ready');
  return { page, browser, url: server.url };
}

/** The months in which the window of two to seven thirds of a 10 000 km interval lies. */
function months() {
  const month = (days) =>
    new Date(Date.now() + days * 24 * 3600 * 1000).toLocaleDateString(defaultLanguage.tag, {
      month: 'long',
      timeZone: 'UTC',
    });
  // 60 km a day, half as much more or less, from ten days ago.
  return [month(10_000 / 90 - 10), month(10_000 / 30 - 10)];
}

test('two jobs on one bike foretell a window, in the plan, the record and the list', async (t) => {
  const { page } = await openOffline(t, dueJobs());
  await goTo(page, '#/record/oil-10');
  await untilSeen(page, words('due.use-first'));
  const part = await under(page, words('due.title'));
  assert.match(part, /29200 km/);
  const [from, to] = months();
  assert.match(part, new RegExp(`About ${from}.* ${to}`));
  assert.doesNotMatch(part.match(/About.*?\./)[0], /\b\d{1,2} \p{L}+ \d{4}/u, 'no day of it');
  assert.match(part, /0\.0\d L per 1000 km/);

  await goTo(page, '#/record/oil-130');
  await untilSeen(page, words('record.oils'));
  assert.ok(!(await seen(page)).includes(words('due.use-first')), 'an old job foretells nothing');

  await goTo(page, bike);
  await untilSeen(page, words('due.not-yet'));
  await tapText(page, words('due.title'));
  await untilSeen(page, words('due.use-first'));

  await goTo(page, '#/record');
  await tap(page, words('record.due-list'), 'link');
  await untilSeen(page, words('due.use-first'));
});

test('with one job only no window is made up', async (t) => {
  const { page } = await openOffline(t, dueJobs().slice(1));
  await goTo(page, '#/record/oil-10');
  await untilSeen(page, words('due.pace-unknown'));
  assert.doesNotMatch(await under(page, words('due.title')), /About/);
});

test('a change dated in years to come counts for nothing, and that is said', async (t) => {
  const ahead = changeOfOil(-1500, '90 000 km');
  const day = ahead[0].summary.finished.slice(0, 10);
  const { page } = await openOffline(t, [ahead]);
  await goTo(page, '#/record/oil--1500');
  await untilSeen(page, words('finding.dated-ahead', { day }));
  assert.doesNotMatch(await under(page, words('due.title')), /100000 km/);
});

test('hard use brings it forward, and a job begun so remembers it', async (t) => {
  const { page } = await openOffline(t, dueJobs());
  await goTo(page, bike);
  await untilSeen(page, '29200 km');
  await page.evaluate(() => (document.querySelector('details.today').open = true));
  await choose(page, words('plan.use.hard'));
  await untilSeen(page, '24200 km');
  await tap(page, words('plan.start'));
  await untilSeen(page, words('job.done'));
  await goTo(page, bike);
  await untilSeen(page, '24200 km');
});

test('the calendar file is read by another parser, each oil on its likely day', async (t) => {
  const { page } = await openOffline(t, dueJobs());
  await goTo(page, '#/record/oil-10');
  await untilSeen(page, words('due.use-first'));
  const file = await download(page, await temporaryFolder(t), words('due.calendar'));
  assert.match(file.name, /^Tessaly Corda 570 \d{4}-\d\d-\d\d\.ics$/);
  const [part] = new ICAL.Component(ICAL.parse(file.text)).getAllSubcomponents('vevent');
  const event = new ICAL.Event(part);
  assert.match(event.summary, /Tessaly Corda 570, engine/);
  assert.match(event.description, /29200\skm.*\nAbout /);
  const days = (event.startDate.toJSDate() - Date.now()) / (24 * 3600 * 1000);
  assert.ok(days > 150 && days < 160, `in ${days} days: 10000 km at 60 a day, ten days ago`);
});

test('the record goes out as a table that a spreadsheet reads', async (t) => {
  const { page } = await openOffline(t, dueJobs());
  await goTo(page, '#/record');
  await tapText(page, words('csv.export'));
  const file = await download(page, await temporaryFolder(t), words('csv.save'));
  assert.match(file.name, /^tidysump-\d{4}-\d\d-\d\d\.csv$/);
  const book = read(file.text, { type: 'string' });
  const [head, newest, oldest] = utils.sheet_to_json(book.Sheets.Sheet1, { header: 1 });
  const cell = (row, word) => row[head.findIndex((text) => text.startsWith(words(word)))];
  assert.equal(head.length, 11);
  assert.equal(cell(newest, 'csv.odometer'), 19200);
  assert.equal(cell(oldest, 'csv.poured'), 2.5);
  assert.equal(cell(newest, 'csv.notes'), `'=1+1, "quoted"; and more`);
  assert.match(cell(newest, 'csv.findings'), /this step was not told/);

  await choose(page, words('csv.form.comma'));
  const other = await download(page, await temporaryFolder(t), words('csv.save'));
  assert.match(other.text, /;2,5;|;19200;/);
});

test('what is due stands on the first screen, and a notice is asked for by a tap only', async (t) => {
  const { page, browser, url } = await openOffline(t, [changeOfOil(450, '12 000 km')]);
  await page.evaluate(() => {
    globalThis.asked = 0;
    const ask = Notification.requestPermission.bind(Notification);
    Notification.requestPermission = () => (globalThis.asked++, ask());
  });
  await goTo(page, '#/due');
  await untilSeen(page, words('due.over', { by: '@due.days', count: '\\d+' }).split('\\d')[0]);
  await untilSeen(page, words('due.notice'));
  assert.equal(await page.evaluate(() => globalThis.asked), 0);
  await browser.defaultBrowserContext().overridePermissions(new URL(url).origin, ['notifications']);
  await tap(page, words('due.notice'));
  await untilSeen(page, words('due.notice.off'));
  assert.equal(await page.evaluate(() => globalThis.asked), 1);

  await goTo(page, '#/bikes');
  await untilSeen(page, words('bikes.due'));
  // What a browser without a desk does with a notice differs: the page's own call counts.
  await page.evaluateOnNewDocument(() => {
    const { prototype } = ServiceWorkerRegistration;
    const show = prototype.showNotification;
    prototype.showNotification = function (title, ...rest) {
      globalThis.shown = [...(globalThis.shown ?? []), title];
      return show.call(this, title, ...rest);
    };
  });
  await page.reload();
  await untilSeen(page, words('bikes.due'));
  await page.waitForFunction(() => globalThis.shown, { polling });
  const told = words('due.notice.text', { bike: 'Tessaly Corda 570' });
  assert.deepEqual(await page.evaluate(() => globalThis.shown), [told]);
});

test('a level that rose, over few kilometres, leads to what it may be', async (t) => {
  const { page } = await openOffline(t, [
    changeOfOil(130, '12 000 km', { left: '60 %' }),
    changeOfOil(10, '1 230 km', { found: '95 %' }),
  ]);
  await goTo(page, '#/record/oil-10');
  await untilSeen(page, words('due.uses'));
  const part = await under(page, words('due.title'));
  assert.match(part, /140 mL more/);
  assert.ok(part.includes(words('use.gained')), part);
  assert.ok(
    part.includes(words('finding.counter-back', { from: '12000 km', to: '1230 km' })),
    part,
  );
  await tapText(page, words('calc.fuel'));
  await untilSeen(page, words('bench.worked'));
  const rise = await page.$$eval('input', (list) => list.map(({ value }) => value));
  assert.ok(rise.includes('140 mL') && rise.includes('2.5 L') && rise.includes('10W-40'), rise);
});
