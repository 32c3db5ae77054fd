// The page of a manual is pasted, and the card fills itself.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo, stored } from './job-page.js';
import { openBrowser, startServer } from './launch.js';
import { freshManual, giveText, leaveAll, takeSure, tapWord, twoModels } from './manual-page.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import { patience } from './patience.js';
import { chooseFrom, heading, seen, tap, untilSeen, write } from './person.js';
import { openAll } from './screens/on-screen.js';
import { words } from './words.js';

const clean = `PLAINFORD HERON 320                                                       2-3
SPECIFICATIONS                                             model years 2016-2022

Engine oil
   without filter replacement ......... 1.5 L (1.6 US qt, 1.3 Imp qt)
   with filter replacement ............ 1.6 L (1.7 US qt, 1.4 Imp qt)
   viscosity, class ................... SAE 10W-40, API SL, JASO MA
Coolant ............................... 1.1 L (1.2 US qt)

TORQUES                                N·m        kgf·m      lbf·ft
Oil drain bolt, M12 x 1.5 ............. 25         2.5        18
Oil filter cover bolts, M6 (3) ........ 12         1.2        9
Spark plug ............................ 16         1.6        12

Oil: first 1,000 km (600 mi), then every 6,000 km (4,000 mi) or 12 months. Filter element: with every oil change.`;

const contradicts = `PLAINFORD HERON 320
Engine oil with filter replacement ............ 1.6 L (1.7 US qt)
Oil drain bolt, M12 x 1.5 ............. 25 N·m
Tighten the oil drain bolt to 30 N·m.`;

const other = `Checking the oil level
Look at the inspection window. Hold the motorcycle upright.`;

/** Puts a text where the phone keeps what was copied. */
async function copy(page, url, text) {
  await page
    .browserContext()
    .overridePermissions(new URL(url).origin, ['clipboard-read', 'clipboard-sanitized-write']);
  await page.bringToFront();
  await page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
}

test('from the first screen to the plan in eight taps at most, with nothing typed and no network', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.setViewport({ width: 360, height: 740 });
  await page.goto(server.url);
  await untilState(page, 'ready');
  await server.stop();
  await page.reload();
  await copy(page, server.url, clean);
  await page.evaluate(() => {
    globalThis.taps = 0;
    globalThis.keys = 0;
    addEventListener('click', ({ isTrusted }) => (globalThis.taps += isTrusted), true);
    addEventListener('keydown', () => globalThis.keys++, true);
  });
  await tap(page, words('bikes.paste'), 'link');
  await tap(page, words('manual.paste'));
  await page.waitForSelector('.page-text', { timeout: patience() });
  assert.equal(await heading(page), 'Plainford Heron 320');
  await takeSure(page);
  await leaveAll(page); // which taps by itself
  await tap(page, words('manual.to-plan'));
  await untilSeen(page, words('plan.start'));
  for (const figure of ['1.6 L', '25 N·m', '12 N·m']) await untilSeen(page, figure);
  assert.ok(!(await seen(page)).includes('16 N·m'), 'the spark plug is no part of it');
  const { taps, keys } = await page.evaluate(() => ({
    taps: globalThis.taps,
    keys: globalThis.keys,
  }));
  assert.ok(taps <= 8, `${taps} taps`);
  assert.equal(keys, 0, 'typed');
  const [{ card }] = await stored(page, 'cards');
  const drain = card.bolts.find(({ purpose }) => purpose === 'drain-plug');
  assert.deepEqual(
    [drain.torque.value, drain.torque.standing, card.yearFrom, card.yearTo],
    [25, 'manual', 2016, 2022],
  );
  assert.ok(card.quotes.some((quote) => quote.words.includes('Oil drain bolt, M12 x 1.5')));
});

test('two places that contradict each other are both shown, one is chosen, and a reload forgets nothing', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, contradicts);
  await takeSure(page);
  const figures = ['25\u00a0N·m', '30\u00a0N·m'];
  const offered = () =>
    page.$$eval('.question button', (all) => all.map((button) => button.textContent.trim()));
  const takes = figures.map((value) => words('manual.take-one', { value }));
  for (const take of takes)
    assert.ok((await offered()).includes(take), `${take}: ${await offered()}`);
  const marked = await page.$$eval('.question mark', (all) => all.map((m) => m.textContent));
  for (const figure of figures)
    assert.ok(
      marked.some((text) => text.includes(figure.slice(0, 2))),
      marked.join(),
    );
  await page.reload();
  await page.waitForSelector('.question', { timeout: patience() });
  assert.equal(await heading(page), 'Plainford Heron 320', 'what was taken is taken');
  assert.deepEqual(await stored(page, 'cards'), [], 'nothing is a card yet');
  await tap(page, takes[1]);
  await page.waitForFunction(
    (text) => !document.querySelector('.question')?.textContent.includes(text),
    { polling },
    takes[1],
  );
  await leaveAll(page);
  await tap(page, words('manual.to-plan'));
  await untilSeen(page, words('plan.start'));
  const [{ card }] = await stored(page, 'cards');
  assert.equal(card.bolts.find(({ purpose }) => purpose === 'drain-plug').torque.value, 30);
  assert.deepEqual(complaints, []);
});

test('of a page of two models one is chosen, and nothing is told of the other', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, twoModels);
  await untilSeen(page, words('manual.models'));
  await tap(page, 'Heron 520', 'radio');
  await page.waitForFunction(() => document.querySelector('.plate')?.textContent.includes('43'), {
    polling,
    timeout: patience(),
  });
  // What a row's own words say beside it is left out: they are those of the manual.
  const bare = (selector) =>
    page.$eval(selector, (element) => {
      const copy = element.cloneNode(true);
      for (const words of copy.querySelectorAll('.standing')) words.remove();
      return copy.textContent.replace(/\s+/g, ' ');
    });
  const noneOfTheOther = (told) => {
    for (const figure of ['24 N·m', '1.6 L', '1.5 L', '10W-30', '16 N·m', '5000 km'])
      assert.ok(!told.includes(figure), `${figure} of the other model in ${told}`);
  };
  noneOfTheOther(await bare('.plate'));
  assert.equal(await heading(page), 'Plainford Heron 520');
  await takeSure(page);
  // A name by itself in the head may be asked.
  const name = words('manual.take-one', { value: 'Plainford' });
  if (await page.$(`::-p-aria([name="${name}"])`)) {
    await tap(page, name);
    await page.waitForFunction(
      (said) => !document.querySelector('.question')?.textContent.includes(said),
      { polling, timeout: patience() },
      name,
    );
  }
  await leaveAll(page);
  await tap(page, words('manual.to-plan'));
  await untilSeen(page, words('plan.start'));
  const plan = await bare('main');
  for (const figure of ['43 N·m', '2.7 L', '20W-50', '19 N·m'])
    assert.ok(plan.includes(figure), `${figure} in ${plan}`);
  noneOfTheOther(plan);
  assert.ok(!plan.includes('Heron 320'), plan);
  assert.deepEqual(complaints, []);
});

test('pages come one after the other: typed, chosen, dropped, shared by another app', async (t) => {
  const { page, url } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, clean);
  const untilPages = (count) =>
    page.waitForFunction(
      (n) => document.querySelectorAll('.page-text').length === n,
      { polling, timeout: patience() },
      count,
    );
  await page.evaluate((text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], 'level.txt', { type: 'text/plain' }));
    document
      .querySelector('main')
      .dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, other);
  await untilPages(2);
  const shared = await page.evaluate(async () => {
    const body = new FormData();
    body.set('title', 'A page');
    body.set('text', 'Oil filter cover bolts 12 N·m');
    body.append('pages', new File(['Oil strainer cap 20 N·m'], 'b.txt', { type: 'text/plain' }));
    const { status, url } = await fetch('/share', { method: 'POST', body });
    return { status, url };
  });
  assert.deepEqual(shared, { status: 200, url });
  await goTo(page, '#/bikes');
  await goTo(page, '#/manual?shared');
  await untilPages(4);
  await untilSeen(page, 'Oil strainer cap');
  await tap(page, words('manual.remove'));
  await untilPages(3);
  await tap(page, words('manual.another'));
  const input = await page.waitForSelector('#page-file');
  await input.evaluate((field) => {
    const chosen = new DataTransfer();
    chosen.items.add(new File(['%PDF-1.7 \0\0'], 'manual.pdf'));
    field.files = chosen.files;
    field.dispatchEvent(new Event('change', { bubbles: true }));
  });
  await untilSeen(page, words('manual.is-pdf'));
  await write(page, '#page-text', 'Oil drain');
  await page.evaluate(() => dispatchEvent(new Event('pagehide')));
  await tap(page, words('manual.back'));
  await untilPages(3);
  await page.reload();
  await untilPages(3);
  await tap(page, words('manual.another'));
  await page.waitForFunction(() => document.querySelector('#page-text').value === 'Oil drain', {
    polling,
    timeout: patience(),
  });
});

test('a word is tapped, and said to be what the page calls otherwise', async (t) => {
  const { page } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, 'PLAINFORD HERON 320\nPlug A .......... 31 N·m');
  await takeSure(page);
  await tapWord(page, '31');
  await untilSeen(page, words('manual.saying'));
  assert.equal(
    await page.$$eval('[aria-pressed=true]', (all) => all.map((b) => b.textContent.trim()).join()),
    '31',
  );
  const say = async (what) => {
    const [, thing, aspect] = /^(.*)\.(.*)$/.exec(what);
    await chooseFrom(page, '#thing', thing);
    const of = { thing: `@manual.of.${thing}`, aspect: `@manual.is.${aspect}` };
    await tap(page, words('manual.what', of));
  };
  await say('oil.engine.dry');
  await untilSeen(page, words('finding.manual-not-that', { text: '31' }));
  await say('bolt.drain.torque');
  await page.waitForSelector('mark[data-kind=taken]');
  await leaveAll(page);
  await tap(page, words('manual.to-plan'));
  await untilSeen(page, words('plan.start'));
  await untilSeen(page, '31 N·m');
});

test('what was copied may be kept from the page: then the field takes it', async (t) => {
  const { page } = await openSite(t, async (fresh) => {
    await fresh.evaluateOnNewDocument(() => {
      navigator.clipboard.readText = async () => {
        throw new DOMException('planted', 'NotAllowedError');
      };
    });
  });
  await untilState(page, 'ready');
  await freshManual(page);
  await tap(page, words('manual.paste'));
  await untilSeen(page, words('manual.no-clipboard'));
  assert.equal(await page.evaluate(() => document.activeElement.id), 'page-text');
  await page.evaluate((text) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', text);
    document.activeElement.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
    );
  }, clean);
  await page.waitForSelector('.page-text', { timeout: patience() });
  await untilSeen(page, 'Plainford Heron 320');
});

test('read aloud it says what was found, each name before its figure and its words, then what to do', async (t) => {
  const { page } = await openSite(t);
  await untilState(page, 'ready');
  await freshManual(page);
  await giveText(page, clean);
  await openAll(page);
  const order = await page.evaluate(() => document.querySelector('main').innerText);
  const places = [
    'Plainford Heron 320',
    'Oil, filter changed too',
    '1.6',
    'with filter replacement',
    'Drain plug',
    'Oil drain bolt',
    words('manual.say'),
    words('manual.another'),
  ].map((text) => [text, order.toLowerCase().indexOf(text.toLowerCase())]);
  for (const [n, [text, place]] of places.entries()) {
    assert.ok(place >= 0, `${text} is missing in ${order}`);
    if (n) assert.ok(place > places[n - 1][1], `${text} before ${places[n - 1][0]}: ${order}`);
  }
  const focused = () => page.evaluate(() => document.activeElement.textContent.trim());
  await page.evaluate(() => document.querySelector('h1').focus());
  for (let keys = 0; (await focused()) !== words('manual.another') && keys < 120; keys++)
    await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  assert.match(await focused(), /^Take the \d+ that are sure$/, 'the keyboard comes to it last');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.activeElement.matches('h1, h2'), { polling });
});
