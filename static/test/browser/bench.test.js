// The calculations: from the step that raises them and on their own, without a
// network, with what was typed kept.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { comesTo } from './comes-to.js';
import { tapAt } from './finger.js';
import { goTo, startJob, stored } from './job-page.js';
import { openBrowser, startServer } from './launch.js';
import { untilState } from './page.js';
import {
  answer,
  chooseFrom,
  enter,
  field,
  heading,
  tap,
  tapText,
  type,
  typed,
  untilSeen,
} from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const drain = card.bolts.find((bolt) => bolt.id === 'drain');
const torque = `${drain.torque.value} N·m`;

test('a step opens its calculation with what the card knows, and loses nothing', async (t) => {
  const page = await offlinePage(t);
  await startJob(page, `${card.make} ${card.model}`);
  const [{ id }] = await stored(page, 'jobs');
  await goTo(page, `#/job/${id}/step/tighten-drain`);
  await type(page, words('ask.torque'), '27 Nm');
  await tap(page, words('calc.wrench'), 'link');

  await untilSeen(page, words('ask.wrenches'));
  assert.equal(await heading(page), words('calc.wrench'));
  await comesTo(() => typed(page, words('ask.wrench.torque')), torque);
  await type(page, words('ask.id'), 'half inch');
  await type(page, words('ask.wrench.low'), '20 Nm');
  await type(page, words('ask.wrench.high'), '100 Nm');
  await tap(page, words('bench.work'));
  await untilSeen(page, words('bench.take'));
  await untilSeen(page, words('wrench.sets'));

  await tap(page, words('nav.back'));
  await untilSeen(page, words('job.must'));
  await comesTo(() => typed(page, words('ask.torque')), '27 Nm', 'what was typed and not kept');

  await goTo(page, '#/bench/wrench');
  await untilSeen(page, words('bench.take'));
  await untilSeen(page, `${words('ask.wrenches')} (1)`);
});

test('the step that measures what came out asks how much fuel is in it', async (t) => {
  const page = await offlinePage(t);
  await startJob(page, `${card.make} ${card.model}`);
  const [{ id }] = await stored(page, 'jobs');
  await goTo(page, `#/job/${id}/step/measure-engine`);
  await tap(page, words('calc.fuel'), 'link');
  await untilSeen(page, words('ask.fuel.out'));
  assert.notEqual(
    await typed(page, words('ask.fuel.volume')),
    '',
    'the card knows how much was put in',
  );
  await comesTo(() => typed(page, words('ask.fuel.grade')), card.circuits[0].oil.grades[0]);
  await type(page, words('ask.fuel.volume'), '3 L');
  await type(page, words('ask.fuel.grade'), '10W-40');
  await type(page, words('ask.fuel.out'), '3.8 L');
  await tap(page, words('bench.work'));
  await untilSeen(page, words('fuel.stop'));
  await untilSeen(page, words('finding.fuel-or-water'));
  await untilSeen(page, words('bench.grades', { grades: '8, 12, 16, 20, 30' }));
});

test('what is wrong is said beside its field, and the field keeps it', async (t) => {
  const page = await offlinePage(t);
  await goTo(page, '#/bench');
  await tapText(page, words('calc.run-out'));
  await type(page, words('ask.run-out.volume'), '300 L');
  await type(page, words('ask.run-out.hole'), '12 parsecs');
  await type(page, words('ask.run-out.temperature'), '65');
  await tap(page, words('bench.work'));
  await untilSeen(page, words('finding.unknown-unit', { text: 'parsecs' }));
  const beside = await (
    await field(page, words('ask.run-out.hole'))
  ).evaluate((input) => input.parentElement.querySelector('.finding').textContent);
  assert.ok(beside.includes(words('finding.unknown-unit', { text: 'parsecs' })), beside);
  await comesTo(() => typed(page, words('ask.run-out.volume')), '300 L');

  await type(page, words('ask.run-out.volume'), '3 L');
  await type(page, words('ask.run-out.hole'), '12 mm');
  await tap(page, words('bench.work'));
  await untilSeen(page, words('figure.stream-ends'));
  const picture = await page.$eval('svg[role=img]', (svg) => svg.getAttribute('aria-label'));
  assert.equal(picture, words('bench.chart.run-out'));

  await goTo(page, '#/bikes');
  await goTo(page, '#/bench/run-out');
  await comesTo(() => typed(page, words('ask.run-out.hole')), '12 mm', 'kept for the next time');
  await tap(page, words('bench.clear'));
  await comesTo(() => typed(page, words('ask.run-out.hole')), '');
});

test('a figure in the wrong column is found out', async (t) => {
  const page = await offlinePage(t);
  await goTo(page, '#/bench/torque-check');
  await chooseFrom(page, 'select[name=what]', 'plug');
  await type(page, words('ask.thread'), 'M12x1.5');
  await chooseFrom(page, 'select[name=seal]', 'flat-copper');
  await type(page, words('ask.torque-check.torque'), '177 Nm');
  await tap(page, words('bench.work'));
  await untilSeen(page, words('torque.not-believable'));
  await untilSeen(page, words('finding.torque-slip', { meant: '177 lbf·in', value: '20 N·m' }));
});

test('what is poured is off the shelf, and the next step asks for the rest', async (t) => {
  const page = await offlinePage(t);
  await startJob(page, `${card.make} ${card.model}`);
  const [{ id }] = await stored(page, 'jobs');
  const pour = `#/job/${id}/step/pour-engine`;
  await goTo(page, pour);
  await enter(page, words('ask.poured'), '1.5 L');
  await untilSeen(page, words('job.poured.left', { poured: '1.5 L', due: '2.5 L', left: '1 L' }));
  await tap(page, words('calc.bottles'), 'link');
  await untilSeen(page, words('ask.bottles.bottles'));
  await comesTo(() => typed(page, words('ask.bottles.need')), '1 L');
  await tap(page, words('bench.add'));
  await type(page, words('ask.bottles.size'), '4 L');
  await type(page, words('ask.bottles.left'), '2.5 L');
  await tap(page, words('bench.work'));
  await tap(page, words('bench.poured'));
  await untilSeen(page, words('bench.poured.said'));
  await comesTo(() => typed(page, words('ask.bottles.left')), '1.5 L');
  await comesTo(() => typed(page, words('ask.bottles.need')), '');
});

test('drops are counted by tapping along, with a finger or a key', async (t) => {
  const page = await offlinePage(t);
  await goTo(page, '#/bench/leak');
  for (const [label, said] of [
    ['ask.leak.tyre', 'leak-tyre.no'],
    ['ask.leak.lamp', 'leak-lamp.out'],
    ['ask.leak.side', 'leak-side.pan'],
    ['ask.leak.way', 'leak-way.drops'],
  ])
    await answer(page, words(label), words(said));
  await untilSeen(page, words('bench.tap'));
  await answer(page, words('ask.leak.engine'), words('leak-engine.running'));
  await page.evaluate(everyTwoSeconds);
  await tapAt(page, '.tap');
  await untilSeen(page, words('bench.taps', { count: 1 }));
  await untilSeen(page, words('finding.taps-few', { fewest: 4 }));
  for (const count of [2, 3, 4, 5]) {
    await page.focus('.tap');
    await page.keyboard.press(count % 2 ? 'Enter' : 'Space');
    await untilSeen(page, words('bench.taps', { count }));
  }
  await untilSeen(page, words('figure.drop-every'));
  await untilSeen(page, words('leak-says.lasts'));

  await answer(page, words('ask.leak.tyre'), words('leak-tyre.yes'));
  await untilSeen(page, words('leak-says.tyre'));
  await tap(page, words('bench.taps-again'));
  await untilSeen(page, words('bench.taps', { count: 0 }));
});

/** Runs in the page: each event whose time is asked for comes 2 s after the one before. */
function everyTwoSeconds() {
  const times = new WeakMap();
  let last = 0;
  Object.defineProperty(Event.prototype, 'timeStamp', {
    get() {
      if (!times.has(this)) times.set(this, (last += 2000));
      return times.get(this);
    },
  });
}

/** A page of the site whose server is gone. */
async function offlinePage(t) {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.setViewport({ width: 360, height: 740 });
  await page.goto(server.url);
  await untilState(page, 'ready');
  await server.stop();
  await page.reload();
  return page;
}
