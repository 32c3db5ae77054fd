// The main bar: a whole oil change without a network, through a dead phone.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  done,
  goTo,
  openAllSteps,
  planOf,
  startJob,
  stored,
  tapDone,
  untilStep,
} from './job-page.js';
import { badReading, besideField, doneTo, note, undo } from './job-walk.js';
import { openBrowser, startServer, temporaryFolder } from './launch.js';
import { choose, enter, heading, seen, tap, tapText, under, untilSeen } from './person.js';
import { killBrowser, startAgain, visitOnce } from './restart.js';
import { openAll } from './screens/on-screen.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;
const drain = card.bolts.find((bolt) => bolt.id === 'drain');

test('a job from the first tap to the record, offline, with the browser killed in the middle', async (t) => {
  const profile = await temporaryFolder(t);
  const url = await visitOnce(t, profile);
  const first = await startAgain(t, profile, url);
  const plan = await planOf(first.page, card);
  const number = (id) => plan.steps.findIndex((step) => step.id === id) + 1;

  await t.test('the plan shows the figures of the card', () => readPlan(first.page));
  await t.test('steps, readings as people type them, notes, undo', (t) =>
    firstHalf(t, first.page, number),
  );
  const at = number('tighten-drain');
  const before = await stored(first.page, 'events');
  assert.deepEqual(first.complaints, []);
  await killBrowser(first.browser);

  const { page, complaints } = await startAgain(t, profile, url);
  await t.test(
    'after the kill the job goes on at the same step, with everything in it',
    async () => {
      await tapText(page, words('bikes.resume'));
      await untilStep(page, at);
      assert.deepEqual(await stored(page, 'events'), before);
      await untilSeen(page, words('job.kept', { value: '29 N·m' }));
      assert.equal(
        await heading(page),
        words('step.tighten', { purpose: words('purpose.drain-plug') }),
      );
    },
  );
  await t.test('to the last step and into the record', () => secondHalf(page, at, plan.steps));
  await t.test('after the ride a second look closes the job', () => secondLook(page));
  assert.deepEqual(complaints, []);
});

async function readPlan(page) {
  await tapText(page, bike);
  await untilSeen(page, words('plan.bolts'));
  assert.equal(await heading(page), bike);
  await openAll(page);
  const { value: litres } = card.circuits[0].withFilter;
  const oil = await under(page, words('role.engine'));
  assert.ok(oil.includes(`${litres} L`), oil);
  assert.ok(oil.includes(card.circuits[0].oil.grades[0]), oil);
  const plug = await under(page, words('purpose.drain-plug'));
  assert.ok(plug.includes(`${drain.torque.value} N·m`), plug);
  const [, feet] = plug.match(/([\d.]+) lbf·ft/);
  const lbfFt = 4.4482216152605 * 0.3048; // N·m, exactly (NIST SP 811, appendix B.8)
  assert.ok(Math.abs(Number(feet) - drain.torque.value / lbfFt) <= 0.5, plug);
  assert.ok(plug.includes(drain.thread), plug);
}

async function firstHalf(t, page, number) {
  await tap(page, words('plan.start'));
  await untilStep(page, 1);
  await enter(page, words('ask.odometer'), '12 400 km');
  await untilSeen(page, /12[ ,.]?400 km/);
  await doneTo(page, 1, number('level-found-engine'));
  await choose(page, words('level.low'));
  await doneTo(page, number('level-found-engine'), number('measure-engine'));
  const negative = words('finding.negative', { value: '-2 L' });
  await badReading(page, words('ask.drained'), '-2 L', negative);
  await t.test('what is wrong is said beside the field', () =>
    besideField(page, words('ask.drained'), negative),
  );
  await enter(page, words('ask.drained'), '3,2 l');
  await untilSeen(page, '3.2 L');
  await note(page, 'Grey paste on the magnet, no pieces.');
  await done(page, number('measure-engine'));
  await undo(page, number('measure-engine'));
  await doneTo(page, number('measure-engine'), number('tighten-drain'));
  await badReading(page, words('ask.torque'), '4000 Nm', unbelievable);
  await enter(page, words('ask.torque'), '29 Nm');
  await untilSeen(page, words('job.kept', { value: '29 N·m' }));
}

// The bounds are the program's own; that they are shown is the fact.
const unbelievable = words('finding.not-believable', {
  value: '4000 N·m',
  low: '0.5 N·m',
  high: '400 N·m',
});

async function secondHalf(page, at, steps) {
  await doneTo(page, at, steps.filter((step) => !step.after).length);
  await tapDone(page);
  await untilSeen(page, words('job.finish.ready'));
  await tap(page, words('job.finish'));
  await untilSeen(page, words('record.readings'));
  assert.equal(await heading(page), bike);
  const readings = await under(page, words('record.readings'));
  for (const value of ['12400 km', '3.2 L', '29 N·m', words('level.low')]) {
    assert.ok(readings.includes(value), `${value} in ${readings}`);
  }
  assert.ok((await under(page, words('record.notes'))).includes('Grey paste'));
  assert.ok(!(await seen(page)).includes(words('record.warnings')), 'no step is missing');
  await untilSeen(page, '22400 km');
}

// Asked for when the app opens the next time; only that it is dry closes the job.
async function secondLook(page) {
  await goTo(page, '#/bikes');
  await tapText(page, `${words('bikes.look-again')}: ${bike}`);
  await untilSeen(page, words('step.second-look'));
  await tapDone(page);
  await untilSeen(page, words('finding.leak-not-said'));
  await choose(page, words('leak.dry'));
  await untilSeen(page, words('job.kept', { value: words('leak.dry') }));
  await tapDone(page);
  await tap(page, words('nav.record'), 'link');
  await untilSeen(page, words('record.closed'));
  await goTo(page, '#/bikes');
  assert.ok(!(await seen(page)).includes(words('bikes.look-again')), 'nothing is asked any more');
}

test('a job closed with steps missing says in the record which', async (t) => {
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.goto(server.url);
  await startJob(page, bike);
  const { steps } = await planOf(page, card);
  const must = steps.filter((step) => step.must);
  await doneTo(page, 1, 5);
  await openAllSteps(page);
  const done = must.filter((step) => steps.indexOf(step) < 4);
  const missing = must.filter((step) => !done.includes(step));
  await untilSeen(page, words('job.finish.missing', { count: missing.length }));
  await tap(page, words('job.finish'));
  await untilSeen(page, words('record.warnings'));
  await untilSeen(page, words('record.waiting'));
  const warnings = await under(page, words('record.warnings'));
  const said = warnings.split(words('finding.finished-without.several'));
  assert.equal(said.length, 2, `once in: ${warnings}`);
  for (const step of missing) {
    const name = words(step.word, step.values);
    assert.ok(said[1].includes(name), `"${name}" in: ${said[1]}`);
  }
});
