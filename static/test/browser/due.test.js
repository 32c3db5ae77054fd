// When the oil is due again: from two jobs on one bike, without a network.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import ICAL from 'ical.js';
import { read, utils } from 'xlsx';
import { download } from './download.js';
import { changeOfOil, dueJobs } from './due-jobs.js';
import { goTo, plant, stored } from './job-page.js';
import { openBrowser, startServer, temporaryFolder } from './launch.js';
import { polling, untilState } from './page.js';
import { choose, seen, tap, tapText, type, under, untilSeen } from './person.js';
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
  await untilSeen(page, '29200 km');
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
  const line = await page.$eval('.due-list summary span', (span) => span.innerText);
  assert.match(line, /[.!] [A-Z].*\.$/s, 'the verdict, and then when: two sentences');
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

/** Writes what the odometer shows into the form that is seen, and waits until it is told to be kept. */
async function odometerShows(page, typed) {
  await type(page, words('odometer.title'), typed);
  await tap(page, words('odometer.keep'));
}

test('what the odometer shows today is written on the bike, on the list of what is due and in the record', async (t) => {
  const { page } = await openOffline(t, dueJobs().slice(1));
  const [day] = [new Date().toISOString().slice(0, 10)];
  for (const [address, typed, shown] of [
    ['#/details/tessaly-corda-570', '19 800', '19800 km'],
    ['#/due', '19,850 km', '19850 km'],
    ['#/record/oil-10', '12400 mi', '19956 km'],
  ]) {
    await goTo(page, address);
    await untilSeen(page, words('odometer.title'));
    await odometerShows(page, typed);
    await untilSeen(page, words('odometer.kept', { at: shown }));
    const last = words('odometer.last', { day: 'DAY', at: shown }).split('DAY')[1];
    await untilSeen(page, last);
  }
  const facts = await stored(page, 'facts');
  assert.deepEqual(
    facts
      .sort((a, b) => a.seq - b.seq)
      .map(({ kind, value, day: told }) => [kind, value, told.slice(0, 7)]),
    [
      ['odometer', '19 800', day.slice(0, 7)],
      ['odometer', '19,850 km', day.slice(0, 7)],
      ['odometer', '12400 mi', day.slice(0, 7)],
    ],
  );
  // It counts: of the way that there was to go less is left.
  await untilSeen(page, words('due.left', { left: '9244 km' }));
  await tap(page, words('odometer.back'));
  await untilSeen(page, words('due.left', { left: '9350 km' }));
});

test('less than before is told beside the field and kept, what is no distance is refused and stays', async (t) => {
  const { page } = await openOffline(t, dueJobs());
  await goTo(page, '#/record/oil-10');
  await untilSeen(page, words('odometer.title'));
  await odometerShows(page, 'far');
  await untilSeen(page, words('finding.not-a-number', { text: 'far' }));
  const field = await page.$('.odometer input');
  assert.equal(await field.evaluate(({ value }) => value), 'far', 'what was typed stays');
  assert.equal(await field.evaluate((input) => input.getAttribute('aria-invalid')), 'true');
  const said = await field.evaluate(
    (input) => document.getElementById(input.getAttribute('aria-describedby')).innerText,
  );
  assert.match(said, /far/, 'the field names what is wrong with it');
  await odometerShows(page, '1 920');
  await untilSeen(page, words('finding.counter-back', { from: '19200 km', to: '1920 km' }));
  assert.equal((await stored(page, 'facts')).length, 1);
  await tap(page, words('odometer.back'));
  await page.waitForFunction(
    (text) => !document.body.innerText.includes(text),
    { polling },
    words('finding.counter-back.do'),
  );
});

test('the picture says in words what it shows, and calls an estimate one', async (t) => {
  const { page } = await openOffline(t, dueJobs());
  await goTo(page, '#/record/oil-10');
  const picture = await page.waitForSelector('.plot svg[role=img]');
  const label = await picture.evaluate((svg) => svg.getAttribute('aria-label'));
  assert.match(
    label.replace(/[\u2066-\u2069]/g, ''),
    /^19200\skm on .*, then 19200\skm on .*29200\skm/,
  );
  const caption = await page.$eval('.plot figcaption', (e) => e.innerText.replace(/\s+/g, ' '));
  assert.ok(caption.includes(words('plot.estimate')), caption);
  assert.ok(
    caption
      .replace(/[\u2066-\u2069]/g, '')
      .includes(words('plot.count-first', { limit: '29200 km' })),
    caption,
  );
  const outside = await page.$eval('.plot svg', (svg) => {
    const box = svg.getBoundingClientRect();
    return [...svg.querySelectorAll('text, line, polyline, polygon, circle')]
      .map((part) => [part.outerHTML.slice(0, 80), part.getBoundingClientRect()])
      .filter(
        ([, r]) =>
          r.left < box.left - 1 ||
          r.right > box.right + 1 ||
          r.top < box.top - 1 ||
          r.bottom > box.bottom + 1,
      )
      .map(([text]) => text);
  });
  assert.deepEqual(outside, [], 'nothing is cut off');
  const touching = await page.$$eval('.plot svg text', (all) => {
    const boxes = all.map((text) => [text.textContent.trim(), text.getBoundingClientRect()]);
    const apart = (a, b) =>
      a.right <= b.left || b.right <= a.left || a.bottom - 3 <= b.top || b.bottom - 3 <= a.top;
    return boxes.flatMap(([name, box], n) =>
      boxes.slice(n + 1).flatMap(([other, b]) => (apart(box, b) ? [] : [`${name} on ${other}`])),
    );
  });
  assert.deepEqual(touching, [], 'no words stand on others');
});

test('opened after a month the app asks once what the odometer shows', async (t) => {
  const { page } = await openOffline(t, [changeOfOil(45, '12 000 km')]);
  await goTo(page, '#/due');
  await untilSeen(page, words('odometer.title'));
  await goTo(page, '#/bikes');
  await page.reload();
  await untilSeen(page, words('odometer.asked', { bike: 'Tessaly Corda 570' }));
  await odometerShows(page, '13 000');
  await untilSeen(page, words('odometer.kept', { at: '13000 km' }));
  const gone = (text) => !document.body.innerText.includes(text);
  await page.waitForFunction(gone, { polling }, words('odometer.asked.why'));
  await page.reload();
  await untilState(page, 'ready');
  await untilSeen(page, words('bikes.title'));
  assert.ok(!(await seen(page)).includes(words('odometer.asked.why')), 'it was told');
});
