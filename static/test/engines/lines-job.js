// The lines of the walk about a job: steps, readings, notes, photos, the level, timers.
import assert from 'node:assert/strict';
import { comes, comesTo } from '../browser/comes-to.js';
import { stored, untilPast } from '../browser/job-page.js';
import { coloursOf, pictures } from '../browser/photos-page.js';
import { dayWords, words } from '../browser/words.js';
import {
  card,
  doneSteps,
  eventsOf,
  everyEvent,
  noteDown,
  openStep,
  stepsOf,
  tapDone,
} from './job-taps.js';
import { oneOf, overWide, rowsOfBar } from './on-screen.js';
import { fallsBack, missing } from './outcome.js';
import { picture } from './picture.js';

const drain = card.bolts.find(({ id }) => id === 'drain');

export const plan = {
  id: 'plan of a bike',
  async run(phone) {
    const { engine, page } = phone;
    await phone.goTo('#/bikes');
    await engine.tap(`a[href="#/bike/${card.id}"]`);
    await engine.untilSeen(words('plan.start'));
    await engine.untilSeen(`${drain.torque.value} N·m`);
    assert.ok((await stepsOf(phone)).length > 30);
    assert.deepEqual(await stored(page, 'jobs'), []);
  },
};

export const start = {
  id: 'job of ten steps',
  async run(phone) {
    const { engine, page, left } = phone;
    await phone.goTo(`#/bike/${card.id}`);
    await phone.tap(words('plan.start'), 'button');
    const steps = await stepsOf(phone);
    const total = steps.length;
    await engine.untilSeen(words('job.step', { number: 1, steps: total }));
    const [job, ...others] = await stored(page, 'jobs');
    assert.deepEqual(others, []);
    left.job = job.id;
    const ten = steps.slice(0, 10).map(({ id }) => id);
    for (const [n, id] of ten.entries()) {
      await engine.untilSeen(words('job.step', { number: n + 1, steps: total }));
      await tapDone(phone);
      await untilPast(page, id);
    }
    await engine.untilSeen(words('job.step', { number: 11, steps: total }));
    const steppedOn = async () => (await eventsOf(phone, 'done')).map(({ step }) => step).sort();
    await comesTo(steppedOn, [...ten].sort());
    await comesTo(() => doneSteps(phone), ten);
  },
};

export const bar = {
  id: 'bar of the job on one row',
  async run(phone) {
    await openStep(phone, 'lay-out');
    await comesTo(() => phone.engine.evaluate(rowsOfBar), 1);
  },
};

export const awake = {
  id: 'screen stays on in a job',
  async run(phone) {
    await openStep(phone, 'lay-out');
    const [held, film, not] = ['job.awake', 'hands.film', 'job.asleep'].map((id) => words(id));
    const seen = await phone.engine.until(oneOf, [held, film, not]);
    if (seen === held) return undefined;
    return seen === film ? fallsBack(film) : missing(not);
  },
};

export const undo = {
  id: 'undo',
  async run(phone) {
    const { engine } = phone;
    const before = await doneSteps(phone);
    const events = (await everyEvent(phone)).length;
    await openStep(phone, before.at(-1));
    await phone.tap(words('job.undo'), 'button');
    await engine.untilSeen(words('job.undone'));
    await comesTo(() => doneSteps(phone), before.slice(0, -1));
    await comesTo(async () => (await everyEvent(phone)).length, events + 1, 'an undo is an event');
  },
};

export const reading = {
  id: 'reading, and a wrong one told',
  async run(phone) {
    const { engine } = phone;
    await openStep(phone, 'identify');
    const before = (await everyEvent(phone)).length;
    await engine.type(words('ask.odometer'), '12 parsecs');
    await engine.tap({ role: 'button', name: words('job.keep') });
    await engine.untilSeen(words('finding.unknown-unit', { text: 'parsecs' }));
    assert.equal((await everyEvent(phone)).length, before, 'nothing was kept');
    const value = '12 400 km';
    await engine.type(words('ask.odometer'), value);
    await engine.tap({ role: 'button', name: words('job.keep') });
    await engine.untilSeen(words('job.kept', { value }));
    const kept = async () =>
      (await eventsOf(phone, 'reading')).map(({ what, value: text }) => [what, text]);
    await comesTo(kept, [['odometer', value]]);
    await engine.untilSeen('12400 km');
  },
};

export const note = {
  id: 'note with any letters',
  async run(phone) {
    const text = 'Öl dunkel, größer als nötig ✓ 10 µm';
    await openStep(phone, 'look-round');
    await noteDown(phone, text);
    await comesTo(async () => (await eventsOf(phone, 'note')).map((event) => event.text), [text]);
  },
};

const red = ([r, g, b]) => r > 180 && g < 80 && b < 80;
const blue = ([r, g, b]) => b > 180 && r < 80 && g < 80;

export const photo = {
  id: 'photo, upright and without its place',
  async run(phone) {
    const { engine, page } = phone;
    await openStep(phone, 'lay-out');
    await engine.tap('details.take summary');
    await engine.file('input[id^="photo-choose"]', picture);
    const unreadable = words('photo.unreadable');
    if ((await engine.until(oneOf, [words('photo.kept'), unreadable])) === unreadable) {
      assert.deepEqual(await stored(page, 'photos'), []);
      return missing(unreadable);
    }
    await engine.until(() => document.querySelector('.photos img')?.naturalWidth > 0);
    const [one, ...others] = await pictures(page);
    assert.deepEqual(others, []);
    // Taken 400 by 200 with the camera turned: its left, which is red, is above.
    assert.deepEqual([one.type, one.width, one.height], ['image/jpeg', 200, 400]);
    const bytes = Buffer.from(one.base64, 'base64').toString('latin1');
    assert.ok(!bytes.includes('Exif'), 'the place is taken out');
    const [above, below] = await coloursOf(page, one.base64, [
      [0.5, 0.2],
      [0.5, 0.8],
    ]);
    assert.ok(red(above) && blue(below), `${above} above ${below}`);
    return undefined;
  },
};

/** Runs in the page: where the marks of the gauge are in its picture, and its middle, in fractions. */
const marksOf = () => {
  const box = document.querySelector('.drag svg').getBoundingClientRect();
  const rim = document.querySelector('.drag svg .rim').getBoundingClientRect();
  const [high, low] = [...document.querySelectorAll('.drag svg .gauge-mark')].map(
    (mark) => (mark.getBoundingClientRect().top - box.top) / box.height,
  );
  return { x: (rim.left + rim.width / 2 - box.left) / box.width, high, low };
};

export const level = {
  id: 'level dragged, within 2 % at five heights',
  async run(phone) {
    const { engine } = phone;
    await openStep(phone, 'level-found-engine');
    await engine.until(() => document.querySelector('.drag svg .rim') !== null);
    const { x, high, low } = await engine.evaluate(marksOf);
    const at = (share) => ({ x, y: low + ((high - low) * share) / 100 });
    for (const share of [100, 75, 50, 25, 0]) {
      await engine.drag('.drag svg', at(50), at(share));
      const read = await comes(
        () => engine.evaluate(() => Number(document.querySelector('.drag input').value)),
        (now) => Math.abs(now - share) <= 2,
      );
      assert.ok(Math.abs(read - share) <= 2, `${share} % is read as ${read} %`);
    }
    await engine.drag('.drag svg', at(50), at(75));
    await phone.tap(words('level.keep', { share: 75 }), 'button');
    await engine.untilSeen(words('job.kept', { value: '75 %' }));
    const kept = async () =>
      (await eventsOf(phone, 'reading'))
        .filter(({ what }) => what === 'level')
        .map(({ value }) => value);
    await comesTo(kept, ['75 %']);
  },
};

const minutes = 60_000; // ms

/** Runs in the page: what a timer shows, in s. */
const digits = () => {
  const [min, s] = (document.querySelector('.digits')?.textContent ?? '').split(':').map(Number);
  return min * 60 + s;
};

export const timer = {
  id: 'timer, through a reload',
  async run(phone) {
    const { engine } = phone;
    await openStep(phone, 'run-out');
    await phone.tap(words('timer.start', { length: '5\u00a0min' }), 'button');
    await engine.untilSeen(words('timer.stop'));
    const [event] = await eventsOf(phone, 'timer');
    const runs = Date.parse(event.until) - Date.parse(event.time);
    assert.ok(Math.abs(runs - 5 * minutes) < minutes / 2, `${runs} ms`);
    const first = await engine.evaluate(digits);
    assert.ok(first > 0 && first <= 300, `${first} s left`);
    await phone.reload();
    await engine.untilSeen(words('timer.stop'));
    const last = (s) => [Math.floor(s / 60), String(s % 60).padStart(2, '0')].join(':');
    await engine.until(
      (before) => ![before, ''].includes(document.querySelector('.digits')?.textContent ?? ''),
      last(first),
    );
    // Read between two looks at the clock, however long the reading takes.
    const left = () => (Date.parse(event.until) - Date.now()) / 1000;
    const most = left();
    const later = await engine.evaluate(digits);
    const least = left();
    const told = `${later} s shown, ${most} to ${least} s left`;
    assert.ok(later < first && later < most + 5 && later > least - 5, told);
    await phone.tap(words('timer.stop'), 'button');
    await engine.untilSeen(words('timer.start', { length: '5 min' }));
  },
};

export const sheet = {
  id: "owner's sheet",
  async run(phone) {
    const { engine, left } = phone;
    await phone.goTo(`#/sheet/${left.job}`);
    await engine.untilSeen(words('paper.owner'));
    await engine.untilSeen(`${card.make} ${card.model}`);
    await engine.untilSeen('12400 km');
    await engine.untilSeen(dayWords(new Date()));
    await comesTo(() => engine.evaluate(overWide), 0, 'px wider than the screen');
  },
};
