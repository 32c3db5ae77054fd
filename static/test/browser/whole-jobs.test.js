// Whole jobs on three kinds of bikes, as a person does them: one through a phone that dies
// while a timer runs, one that ends with a stop, one with an entry that was wrong; and two on
// twins of one model at once.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { beginBike } from './bike-page.js';
import { tapAt } from './finger.js';
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
import { doneTo, undo } from './job-walk.js';
import { openBrowser, startServer, temporaryFolder } from './launch.js';
import { openWithoutServer } from './open-site.js';
import { answer, choose, enter, seen, tap, tapText, type, under, untilSeen } from './person.js';
import { killBrowser, startAgain, visitOnce } from './restart.js';
import { sampleCard, words } from './words.js';

const nameOf = ({ make, model }) => `${make} ${model}`;
const numberOf = (steps, id) => {
  const at = steps.findIndex((step) => step.id === id);
  assert.ok(at >= 0, `${id} among ${steps.map((step) => step.id)}`);
  return at + 1;
};

/** Says that the last step before the ride is done, finishes, and looks again. */
async function finish(page, name) {
  await tapDone(page);
  await untilSeen(page, words('job.finish.ready'));
  await tap(page, words('job.finish'));
  await untilSeen(page, words('record.waiting'));
  await goTo(page, '#/bikes');
  await tapText(page, `${words('bikes.look-again')}: ${name}`);
  await choose(page, words('leak.dry'));
  await untilSeen(page, words('job.kept', { value: words('leak.dry') }));
  await tapDone(page);
  await tap(page, words('nav.record'), 'link');
  await untilSeen(page, words('record.closed'));
}

const before = (steps) => steps.filter(({ after }) => !after).length;

test('a twin with a window, the phone dead while the oil runs out', async (t) => {
  const card = sampleCard('tessaly-corda-570');
  const profile = await temporaryFolder(t);
  const url = await visitOnce(t, profile);
  const first = await startAgain(t, profile, url);
  const { steps } = await planOf(first.page, card);
  const running = numberOf(steps, 'run-out');
  await startJob(first.page, nameOf(card));
  await doneTo(first.page, 1, running);
  const [drain] = steps[running - 1].timers;
  await tap(first.page, words('timer.start', { length: drain.texts[0].replace(' ', '\u00a0') }));
  await untilSeen(first.page, words('timer.stop'));
  const [{ until }] = (await stored(first.page, 'events')).filter(({ kind }) => kind === 'timer');
  await killBrowser(first.browser);

  const { page, complaints } = await startAgain(t, profile, url);
  await tapText(page, words('bikes.resume'));
  await untilStep(page, running);
  await untilSeen(page, words('timer.stop'));
  const [left, now] = await page.$eval('[role="timer"]', (timer) => [
    timer.textContent,
    Date.now(),
  ]);
  const [minutes, seconds] = left.match(/\d+/g).map(Number);
  const due = (Date.parse(until) - now) / 1000;
  assert.ok(Math.abs(minutes * 60 + seconds - due) < 5, `${left} left of ${due} s`);
  await doneTo(page, running, numberOf(steps, 'pour-engine'));
  await enter(page, words('ask.poured'), '2.1');
  const left2 = { poured: '2.1 L', due: '2.5 L', left: '0.4 L' };
  await untilSeen(page, words('job.poured.left', left2));
  await doneTo(page, numberOf(steps, 'pour-engine'), before(steps));
  await finish(page, nameOf(card));
  assert.deepEqual(complaints, []);
});

test('a single with a strainer, a piece of metal in it: the job ends there', async (t) => {
  const card = sampleCard('marrowick-pip-130');
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.goto(server.url);
  await startJob(page, nameOf(card));
  const { steps } = await planOf(page, card);
  const look = steps.find(({ word }) => word === 'step.look-strainer');
  await doneTo(page, 1, numberOf(steps, look.id));
  await answer(page, words('ask.found'), words('bit.part'));
  await untilSeen(page, words('debris.stop'));
  await tap(page, words('look.keep'));
  await untilSeen(page, `✓ ${words('look.kept')}`);
  await doneTo(page, numberOf(steps, look.id), numberOf(steps, 'decide'));
  await untilSeen(page, words('debris.stop'));
  // It is filled for the way to the workshop, and not started.
  await doneTo(page, numberOf(steps, 'decide'), numberOf(steps, 'first-start'));
  await untilSeen(page, words('caution.found-stop'));
  await openAllSteps(page);
  await tap(page, words('job.finish'));
  await untilSeen(page, words('record.warnings'));
  const warnings = await under(page, words('record.warnings'));
  const [, missing] = warnings.split(words('finding.finished-without.several'));
  assert.ok(missing?.includes(words('step.first-start')), warnings);
  const found = await under(page, words('look.title'));
  assert.ok(found.includes(words('debris.stop')), found);
});

test('a big twin with three oils, one of them written down wrong', async (t) => {
  const card = sampleCard('hallowmoor-drover-1360');
  const server = await startServer(t);
  const page = await (await openBrowser(t)).newPage();
  await page.goto(server.url);
  await tapText(page, nameOf(card));
  await untilSeen(page, words('plan.start'));
  await tapAt(page, '.today summary');
  for (const role of ['primary', 'gearbox']) {
    await choose(page, words(`role.${role}`));
    await untilSeen(page, words('plan.start'));
  }
  await tap(page, words('plan.start'));
  await untilStep(page, 1);
  const [{ bench }] = await stored(page, 'jobs');
  assert.deepEqual(bench.circuits, ['engine', 'primary', 'gearbox']);
  const { ok } = await page.evaluate((input) => globalThis.tidysump.core.call('plan', input), {
    card,
    bench,
  });
  const pour = numberOf(ok.steps, 'pour-engine');
  await doneTo(page, 1, pour);
  await enter(page, words('ask.poured'), '5');
  await untilSeen(page, words('job.poured.all', { poured: '5 L', due: '3.8 L' }));
  await undo(page, pour);
  assert.ok(!(await seen(page)).includes('5 L of'), 'the wrong entry counts no more');
  await enter(page, words('ask.poured'), '3.3');
  await untilSeen(page, words('job.poured.left', { poured: '3.3 L', due: '3.8 L', left: '0.5 L' }));
  await done(page, pour);
  await doneTo(page, pour + 1, before(ok.steps));
  await finish(page, nameOf(card));
  const balance = await under(page, words('role.engine'));
  assert.ok(balance.includes(words('record.poured', { value: '3.3 L' })), balance);
});

test('two twins of one model on one day, a step here and a step there', async (t) => {
  const card = sampleCard('tessaly-corda-570');
  const page = await openWithoutServer(t);
  await untilSeen(page, nameOf(card));
  const twins = [
    { called: 'Anna', plate: 'EF-34', volume: '2.5 L', poured: '2.1', left: '0.4 L' },
    { called: 'Bertha', plate: 'AB-12', volume: '2.2 L', poured: '1.9', left: '0.3 L' },
  ];
  for (const twin of twins) {
    const { called, plate } = twin;
    twin.name = `${called} · ${plate} · ${nameOf(card)}`;
    twin.id = await beginBike(page, card.id, { called, plate });
  }
  // Of one of them the volume was measured: its job goes by that, the other by the card.
  await tapText(page, words('details.figure.add'));
  const what = `${words('own.volume-filter')} · ${words('role.engine')}`;
  await answer(page, words('details.figure.what'), what);
  await type(page, words('details.figure.value'), '2.2 L');
  await type(page, words('details.figure.why'), 'filled to the upper mark');
  await tap(page, words('details.figure.keep'));
  await untilSeen(page, words('details.figure.kept'));

  const { steps } = await planOf(page, card);
  const pour = numberOf(steps, 'pour-engine');
  const at = new Map();
  const workOn = async (twin, to) => {
    await goTo(page, '#/bikes');
    await tapText(page, `${words('bikes.resume')}: ${twin.called}`);
    await untilStep(page, at.get(twin));
    await doneTo(page, at.get(twin), to);
    at.set(twin, to);
  };
  for (const twin of twins) {
    await goTo(page, '#/bikes');
    await tapText(page, `${twin.called} · ${twin.plate}`);
    await untilSeen(page, words('plan.start'));
    await untilSeen(page, twin.volume);
    await tap(page, words('plan.start'));
    await untilStep(page, 1);
    at.set(twin, 1);
  }
  const [anna, bertha] = twins;
  await workOn(anna, 5);
  await workOn(bertha, 9);
  await workOn(anna, pour);
  await workOn(bertha, pour);
  for (const twin of twins) {
    await workOn(twin, pour);
    await enter(page, words('ask.poured'), twin.poured);
    const { poured, volume: due, left } = twin;
    await untilSeen(page, words('job.poured.left', { poured: `${poured} L`, due, left }));
  }
  await workOn(anna, before(steps));
  await finish(page, anna.called);
  await workOn(bertha, before(steps));
  await finish(page, bertha.called);

  const jobs = await stored(page, 'jobs');
  assert.deepEqual(jobs.map(({ bike }) => bike).sort(), [anna.id, bertha.id].sort());
  for (const twin of twins) {
    await goTo(page, `#/details/${twin.id}`);
    await untilSeen(page, words('details.jobs'));
    assert.equal((await page.$$('.jobs li')).length, 1, twin.called);
    const [job] = jobs.filter(({ bike }) => bike === twin.id);
    await goTo(page, `#/sheet/${job.id}`);
    await untilSeen(page, twin.name);
    const other = twins.find(({ id }) => id !== twin.id);
    assert.ok(!(await seen(page)).includes(other.called), 'a sheet tells of one bike');
  }
});
