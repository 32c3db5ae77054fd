// A bike of one's own, written in from a list of figures, without a network.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { keep, openFile, save, tick } from './cards-page.js';
import { goTo, stored } from './job-page.js';
import { openBrowser, startServer, temporaryFolder } from './launch.js';
import { polling, untilState } from './page.js';
import { choose, chooseFrom, leave, tap, tapText, untilSeen, write } from './person.js';
import { edit } from './screens/cards.js';
import { openAll } from './screens/on-screen.js';
import { words } from './words.js';

// As a manual prints them, in the order of the editor.
const printed = [
  ['/make', 'Plainford'],
  ['/model', 'Two'],
  ['/engine/displacement', '250'],
  ['/sources/0/title', 'Plainford Two, manual'],
  ['/circuits/0/oil/grades', '10w40'],
  ['/circuits/0/oil/marks', 'JASO MA2'],
  ['/circuits/0/oilOnly', '1,3'],
  ['/circuits/0/withFilter', '1.4 L'],
  ['/bolts/0/thread', 'M12x1.5'],
  ['/bolts/0/torque', '18-20 ft-lb'],
];

test('an own card: written in, left half-done, doubted, kept with a reason, planned, given away and back', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.setViewport({ width: 360, height: 740 });
  await page.goto(server.url);
  await untilState(page, 'ready');
  await server.stop();
  await goTo(page, '#/edit');
  await choose(page, words('edit.filter-cartridge'));
  await tapText(page, words('layout.wet-sump'));
  await page.waitForSelector('[name="/make"]');

  for (const [name, text] of printed.slice(0, 4)) await enter(page, name, text);
  await page.reload();
  await page.waitForSelector('[name="/make"]');
  assert.equal(await held(page, '/make'), 'Plainford', 'half-done, and kept');
  for (const [name, text] of printed.slice(4)) await enter(page, name, text);
  for (const [name, typed, read] of [
    ['/circuits/0/oil/grades', '10w40', '10W-40'],
    ['/circuits/0/oilOnly', '1,3', '1.3 L'],
    ['/bolts/0/torque', '18-20 ft-lb', '18–20 lbf·ft'],
  ]) {
    assert.equal(await held(page, name), typed, 'echoed as it was typed');
    await untilSeen(page, words('edit.read-as', { text: read }));
  }
  await enter(page, '/bolts/0/torque', '26 N·m (2.7 kgf·m, 25 lbf·ft)');
  const twins = { text: '26 N·m', other: '25 lbf·ft' };
  await untilSeen(page, words('finding.twin-differs', twins));
  await enter(page, '/bolts/0/torque', '18-20 ft-lb');
  await page.waitForFunction(
    (text) => !document.body.innerText.includes(text),
    {},
    words('finding.twin-differs', twins),
  );

  await enter(page, '/circuits/0/withFilter', '1.4 parsecs');
  await untilSeen(page, words('finding.unknown-unit', { text: 'parsecs' }));
  assert.equal(await held(page, '/circuits/0/withFilter'), '1.4 parsecs', 'nothing typed is lost');
  await enter(page, '/circuits/0/withFilter', '14 L');
  const doubt = words('finding.volume-odd', { value: '14 L', displacement: '250 cm³' });
  await untilSeen(page, doubt);
  await enter(page, '/circuits/0/withFilter/kept', 'the manual says so twice');
  await page.waitForFunction((text) => !document.body.innerText.includes(text), {}, doubt);

  await tap(page, words('edit.plan'), 'link');
  await untilSeen(page, '18–20 lbf·ft');
  await untilSeen(page, words('plan.start'));

  const folder = await temporaryFolder(t);
  await goTo(page, '#/cards');
  await tick(page, 'Plainford Two');
  const first = await save(page, folder);
  await tapText(page, words('cards.delete'));
  await tap(page, words('cards.delete'));
  await untilSeen(page, words('cards.undo'));
  await goTo(page, '#/bikes');
  assert.deepEqual(await stored(page, 'cards'), [], 'wiped');
  await openFile(page, first.path);
  await keep(page, 1);
  await tick(page, 'Plainford Two');
  assert.equal((await save(page, folder)).text, first.text, 'the same to the byte');
  await goTo(page, '#/bikes');
  await tapText(page, 'Plainford Two');
  await untilSeen(page, '18–20 lbf·ft');
});

test('a card is told what is in front of what, and which step a note belongs to', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.setViewport({ width: 360, height: 740 });
  await page.goto(server.url);
  await untilState(page, 'ready');
  await goTo(page, '#/edit');
  await choose(page, words('edit.filter-cartridge'));
  await tapText(page, words('layout.wet-sump'));
  await tapText(page, `+ ${words('purpose.panel')}`);
  await enter(page, '/bolts/3/place', 'belly pan');
  const panel = `${words('purpose.panel')} · belly pan`;
  assert.ok((await offered(page, '/bolts/0/behind')).includes(panel));
  assert.ok(!(await offered(page, '/bolts/3/behind')).includes(panel), 'in front of itself');
  await chooseFrom(page, '[name="/bolts/0/behind"]', 'panel');
  await chooseFrom(page, '[name="/bolts/3/behind"]', 'drain-plug');
  await untilSeen(page, words('finding.behind-circle'));
  await chooseFrom(page, '[name="/bolts/3/behind"]', '');
  await page.waitForFunction(
    (text) => !document.body.innerText.includes(text),
    {},
    words('finding.behind-circle'),
  );

  await tapText(page, `+ ${words('edit.note-at')}`);
  await untilSeen(page, words('finding.note-empty'));
  await chooseFrom(page, '[name="/notesAt/0/at"]', 'filter-off');
  await enter(page, '/notesAt/0/text', 'Fold a spout.');
  await enter(page, '/make', 'Plainford');
  await enter(page, '/model', 'Three');
  await enter(page, '/sources/0/title', 'Plainford Three, manual');
  const [{ card }] = await stored(page, 'cards');
  assert.equal(card.bolts[0].behind, 'panel');
  assert.deepEqual(card.notesAt, [{ at: 'filter-off', text: 'Fold a spout.' }]);
  await tap(page, words('edit.plan'), 'link');
  await page.waitForSelector('main details');
  await openAll(page);
  await untilSeen(page, `${words('note-at.filter-off')}: Fold a spout.`);
});

const offered = (page, name) =>
  page.$eval(`[name="${name}"]`, ({ options }) => [...options].map((option) => option.text));

/** Writes into an entry, and waits until it is taken in. */
async function enter(page, name, text) {
  await write(page, `[name="${name}"]`, text);
  await page.keyboard.press('Enter');
  await leave(page);
  await page.waitForSelector('[aria-busy=false]');
}

const held = (page, name) => page.$eval(`[name="${name}"]`, (element) => element.value);

test('a new card asks for five figures first; the rest is folded, and the plan stays in reach', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.setViewport({ width: 360, height: 740 });
  await page.goto(server.url);
  await untilState(page, 'ready');
  await goTo(page, '#/edit');
  await tapText(page, words('layout.flat-twin'));
  await page.waitForSelector('[name="/make"]');
  const open = await page.$$eval('main .field input, main .field select', (list) =>
    list.filter((e) => e.checkVisibility?.() ?? e.offsetParent).map(({ name }) => name),
  );
  assert.deepEqual(open.slice(0, 3), ['/make', '/model', '/sources/0/title']);
  assert.equal(open.length, 8, open.join(' '));
  assert.ok(open.includes('/circuits/1/oilOnly'), 'the gearbox has an oil of its own');
  for (const height of [740, 568]) {
    await page.setViewport({ width: 320, height });
    await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
    const { top, bottom } = await page.$eval('.screen-edit .bar', (bar) => {
      const { top, bottom } = bar.getBoundingClientRect();
      return { top, bottom };
    });
    assert.ok(top >= 0 && bottom <= height / 3, `the bar stands from ${top} to ${bottom}`);
  }
  await enter(page, '/circuits/0/level/wait', '3 minutes after idling 3–5 min');
  assert.equal(await held(page, '/circuits/0/level/wait'), '3 minutes after idling 3–5 min');
  await untilSeen(page, words('edit.read-as', { text: '3 min' }));

  // Its plate grows: in the line above the form, and beside it where there is room.
  await enter(page, '/circuits/0/withFilter', '4,2');
  const grown = (selector) =>
    page.waitForFunction(
      (of) => document.querySelector(of)?.innerText.includes('4.2'),
      { polling },
      selector,
    );
  await grown('.plate-line summary');
  await page.setViewport({ width: 1280, height: 900 });
  await grown('aside .plate');
  const [form, beside] = await page.$$eval('.beside > *', (both) =>
    both.map((side) => side.getBoundingClientRect().toJSON()),
  );
  assert.ok(beside.left >= form.right, 'the plate stands beside the form');
});

test('what stands in the words of a manual shows them, until it is written otherwise', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.setViewport({ width: 360, height: 740 });
  await page.goto(server.url);
  await untilState(page, 'ready');
  await edit['editor: words of the manual'](page);
  const quotes = () => page.$$eval('.quoted q', (all) => all.map((q) => q.textContent));
  const [volume, device] = [
    'Change: 3.6 L (3.8 US qt), with filter 3.8 L',
    'push the dipstick home',
  ];
  assert.deepEqual((await quotes()).sort(), [volume, device].sort());
  await enter(page, '/circuits/0/oilOnly', '3.4 L');
  await page.waitForFunction(
    (words) => !document.body.innerText.includes(words),
    { polling },
    volume,
  );
  assert.deepEqual(await quotes(), [device], 'what was not touched keeps its words');
  await enter(page, '/circuits/0/oilOnly', '3.6 L');
  await untilSeen(page, volume);

  await goTo(page, '#/bike/quoted');
  await untilSeen(page, words('plan.start'));
  await openAll(page);
  await untilSeen(page, words('standing.quote', { words: volume }));
});
