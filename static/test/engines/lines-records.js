// The lines of the walk about what is written, given away and taken in: an own bike, a
// backup, QR codes.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { gunzipSync } from 'node:zlib';
import { comes, comesTo } from '../browser/comes-to.js';
import { held } from '../browser/held.js';
import { stored } from '../browser/job-page.js';
import { pieces, words } from '../browser/words.js';
import { card } from './job-taps.js';
import { oneOf } from './on-screen.js';
import { fallsBack, missing } from './outcome.js';
import { write } from './write.js';

/** Writes into an entry of the editor, and waits until it is taken in. */
async function enter({ engine }, name, text) {
  await engine.evaluate((of) => {
    const fold = document.querySelector(`[name="${of}"]`).closest('details.fold');
    if (fold) fold.open = true;
  }, name);
  await write(engine, `[name="${name}"]`, text);
  await engine.press('Enter');
  await engine.evaluate(() => document.activeElement.blur());
  await engine.until(() => document.querySelector('[aria-busy=false]') !== null);
}

const holds = ({ engine }, name) =>
  engine.evaluate((of) => document.querySelector(`[name="${of}"]`).value, name);

export const editor = {
  id: 'own bike, by the editor',
  async run(phone) {
    const { engine, page } = phone;
    await phone.goTo('#/edit');
    await phone.tap(words('layout.wet-sump'), 'button');
    await engine.until(() => document.querySelector('[name="/make"]') !== null);
    for (const [name, text] of [
      ['/make', 'Plainford'],
      ['/model', 'Two'],
      ['/engine/displacement', '650'],
      ['/sources/0/title', 'Plainford Two, manual'],
      ['/circuits/0/oil/grades', '10w40'],
      ['/circuits/0/oilOnly', '2,6 L'],
      ['/bolts/0/torque', '18-20 ft-lb'],
    ])
      await enter(phone, name, text);
    await comesTo(() => holds(phone, '/circuits/0/oilOnly'), '2,6 L', 'as it was typed');
    await engine.untilSeen(words('edit.read-as', { text: '2.6 L' }));
    const kept = async () =>
      (await stored(page, 'cards')).map(({ card: { make, circuits } }) => [
        make,
        circuits[0].oil?.grades,
        circuits[0].oilOnly?.value,
      ]);
    await comesTo(kept, [['Plainford', ['10W-40'], 2.6]]);
    await phone.tap(words('edit.plan'), 'link');
    await engine.untilSeen(words('plan.start'));
    await engine.untilSeen('18–20 lbf·ft');
    await phone.goTo('#/bikes');
    await engine.untilSeen('Plainford Two');
  },
};

const pageOfManual = `PLAINFORD STOAT 320    model years 2016-2022
Engine oil, wet sump
   without filter replacement ......... 1.5 L (1.6 US qt)
   with filter replacement ............ 1.6 L (1.7 US qt)
Oil drain bolt, M12 x 1.5 ............. 25 N·m (18 lbf·ft)
Spark plug ............................ 16 N·m (12 lbf·ft)`;

/** Runs in the page: puts a text into a field, which must be there, and tells the page of it. */
const putInto = (selector, text) => {
  const field = document.querySelector(selector);
  if (!field) return false;
  field.value = text;
  for (const heard of ['input', 'change']) field.dispatchEvent(new Event(heard, { bubbles: true }));
  return true;
};

/**
 * Runs in the page: gives the first answer to what is asked there, once each; says whether
 * the plan is next.
 */
const answered = (toPlan) => {
  const main = document.querySelector('.actions .main');
  if (main && main.textContent.trim() === toPlan) {
    delete globalThis.answeredLast;
    return true;
  }
  const question = document.querySelector('.question');
  const asked = question && question.querySelector('h2').textContent;
  if (!question || asked === globalThis.answeredLast) return false;
  globalThis.answeredLast = asked;
  question.querySelector('button').click();
  return false;
};

export const manual = {
  id: 'page of a manual, read and taken',
  async run(phone) {
    const { engine, page } = phone;
    await phone.goTo('#/manual');
    await engine.until(putInto, 'main textarea', pageOfManual);
    await phone.tap(words('manual.read-it'), 'button');
    await engine.until(() => document.querySelector('.page-text') !== null);
    await engine.tap('.actions .main'); // all that is sure
    await engine.until(answered, words('manual.to-plan'));
    await phone.tap(words('manual.to-plan'), 'button');
    await engine.untilSeen(words('plan.start'));
    await engine.untilSeen('25 N·m');
    const torques = async () =>
      (await stored(page, 'cards'))
        .filter((one) => one.card.model === 'Stoat 320')
        .map((one) => one.card.bolts.find(({ purpose }) => purpose === 'drain-plug')?.torque)
        .map((torque) => [torque?.value, torque?.standing]);
    await comesTo(torques, [[25, 'manual']]);
  },
};

export const backup = {
  id: 'backup saved to a file',
  async run(phone) {
    const { engine, page, left } = phone;
    left.store = await held(page);
    await phone.goTo('#/keep');
    await phone.tap(words('keep.make'), 'button');
    await engine.untilSeen(words('keep.save'));
    const { name, path } = await engine.download(() => phone.tap(words('keep.save'), 'button'));
    await engine.untilSeen(words('keep.saved'));
    left.backup = path;
    const bytes = await readFile(path);
    const packed = bytes[0] === 0x1f && bytes[1] === 0x8b;
    const lines = (packed ? gunzipSync(bytes) : bytes).toString('utf8').trim().split('\n');
    assert.match(name, packed ? /^tidysump-backup-.*\.jsonl\.gz$/ : /^tidysump-backup-.*\.txt$/);
    const events = lines.map((line) => JSON.parse(line)).filter(({ event }) => event);
    assert.equal(events.length, left.store.events.length);
    assert.ok(events.length > 10);
    return packed ? undefined : fallsBack('the file is plain text, not compressed');
  },
};

export const restore = {
  id: 'all erased, and restored from the file',
  async run(phone) {
    const { engine, page, left } = phone;
    await phone.goTo('#/keep/erase');
    await engine.type(words('erase.label', { word: words('erase.word') }), words('erase.word'));
    // The first screen may be drawn before the page loads anew: only what a new page
    // says counts, and nothing is asked of one that is being left.
    await engine.evaluate(() => (globalThis.beforeErasing = true));
    await phone.tap(words('erase.do'), 'button');
    await engine.until(() => !globalThis.beforeErasing && globalThis.tidysump?.offline.state.ready);
    await engine.untilSeen(words('bikes.title'));
    const nothing = { photos: [], jobs: [], events: [], cards: [], lines: [] };
    await comesTo(() => held(page), nothing);
    await phone.goTo('#/keep');
    await engine.file('#backup-file', left.backup);
    await engine.untilSeen(words('restore.rule'));
    assert.deepEqual(await held(page), nothing, 'nothing is changed before it is said');
    await phone.tap(words('restore.do'), 'button');
    await engine.untilSeen(words('restore.done'));
    await comesTo(async () => inOrder(await held(page)), inOrder(left.store));
    await phone.goTo(`#/record/${left.job}`);
    await engine.untilSeen(`${card.make} ${card.model}`);
  },
};

/** The same records, and what they hold, in one order. */
function sorted(value) {
  if (Array.isArray(value)) return value.map(sorted);
  if (Object(value) !== value) return value;
  return Object.fromEntries(
    Object.keys(value)
      .sort()
      .map((name) => [name, sorted(value[name])]),
  );
}

/** The lists of the store, each in one order. */
const inOrder = (all) =>
  Object.fromEntries(
    Object.entries(all).map(([name, list]) => [
      name,
      list.map((one) => JSON.stringify(sorted(one))).sort(),
    ]),
  );

export const codes = {
  id: 'card as QR codes, and back',
  async run(phone) {
    const { engine } = phone;
    await phone.goTo(`#/cards/show/${card.id}`);
    const cannot = words('qr.cannot');
    const seen = await engine.until(oneOf, [words('qr.show.how'), cannot]);
    if (seen === cannot) return fallsBack(cannot);
    const sizeOf = () => {
      const code = document.querySelector('.qr svg');
      if (!code) return [0, 0];
      const { width, height } = code.getBoundingClientRect();
      return [width, height];
    };
    const square = ([width, height]) => Math.abs(width - height) < 1 && width > 200;
    const size = await comes(() => engine.evaluate(sizeOf), square);
    assert.ok(square(size), `${size.join(' by ')} px`);
    await phone.tap(words('qr.as-text'), 'summary');
    const texts = await engine.until(() => document.querySelector('details textarea')?.value);
    assert.match(texts, /^TSC1:/);
    await phone.goTo('#/cards/read');
    await engine.until(putInto, '#qr-codes', texts);
    await phone.tap(words('qr.paste.read'), 'button');
    await engine.untilSeen(words('pack.same.why'));
    return undefined;
  },
};

export const room = {
  id: 'how much space is left',
  async run(phone) {
    await phone.goTo('#/keep');
    const unknown = words('room.unknown');
    const [used] = pieces('room.used');
    const seen = await phone.engine.until(oneOf, [used, unknown]);
    return seen === unknown ? missing(unknown) : undefined;
  },
};
