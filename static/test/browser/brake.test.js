// What keeps a tap from meaning more than it was meant to: the brake at a gate, and a
// second tap that meets the next step.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  goOn,
  goTo,
  openStep,
  startJob,
  stored,
  tapDone,
  untilReady,
  untilStep,
} from './job-page.js';
import { openSite } from './open-site.js';
import { answer, seen, tap, tapText, type, under, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

const dones = async (page) =>
  (await stored(page, 'events'))
    .sort((a, b) => a.seq - b.seq)
    .filter(({ kind }) => kind === 'done')
    .map(({ step, manner }) => [step, manner]);

const atGate = async (page) => (await page.$('.actions.brake')) !== null;

test('at a gate Done asks once, and the record says what was chosen', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  await openStep(page, 'look-oil');
  await untilReady(page);
  await tap(page, words('job.done'));
  await untilSeen(page, words('job.brake'));
  assert.deepEqual(await dones(page), [], 'nothing is done yet');
  await untilReady(page);
  await tap(page, words('job.brake.look'));
  assert.equal(await atGate(page), false);
  const inLook = () => document.activeElement?.closest('.look') !== null;
  assert.equal(await page.evaluate(inLook), true, 'what is to be told has the focus');

  await answer(page, words('ask.found'), words('bit.nothing'));
  await untilReady(page);
  await tap(page, words('job.done'));
  await untilSeen(page, words('step.look-magnet'));
  assert.deepEqual(await dones(page), [['look-oil', undefined]]);

  await untilReady(page);
  await tap(page, words('job.done'));
  await untilSeen(page, words('job.brake'));
  await goOn(page);
  await untilSeen(page, words('step.look-filter'));
  assert.deepEqual((await dones(page)).at(-1), ['look-magnet-drain', 'unlooked']);
  const [{ id }] = await stored(page, 'jobs');
  await goTo(page, `#/record/${id}`);
  await untilSeen(page, words('record.passed'));
  assert.ok((await under(page, words('record.passed'))).includes(words('step.look-magnet')));
  assert.deepEqual(complaints, []);
});

test('a step that is no gate asks nothing', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  await openStep(page, 'tighten-drain');
  await untilReady(page);
  await tap(page, words('job.done'));
  await untilSeen(page, words('step.prepare-spin-on'));
  assert.ok(!(await seen(page)).includes(words('job.brake')));
});

test('a second tap that comes too soon for the next step does not skip it', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, bike);
  await untilReady(page);
  const main = await page.waitForSelector('.actions .main');
  const { x, y, width, height } = await main.boundingBox();
  const at = [x + width / 2, y + height / 2];
  await page.mouse.click(...at);
  await untilStep(page, 2);
  await page.mouse.click(...at); // sooner than anybody can read
  const soon = await page.evaluate(() => !document.querySelector('.step[data-ready]'));
  await untilReady(page);
  const steps = (await dones(page)).map(([step]) => step);
  if (soon) assert.deepEqual(steps, ['identify']);
  await page.mouse.click(...at);
  await untilStep(page, 3);
});

test('the large button says what it keeps; a torque is taken over from the card in one tap', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  await openStep(page, 'tighten-drain');
  const label = () => page.$eval('.actions .main', (e) => e.innerText.trim());
  assert.equal(await label(), words('job.done'));
  const title = words('step.tighten', { purpose: words('purpose.drain-plug') });
  assert.ok((await page.title()).startsWith(title), await page.title());
  await tapText(page, words('manner.as-card'));
  await untilSeen(page, words('job.done.at', { value: '29 N·m' }));
  await tapDone(page);
  await untilSeen(page, words('step.prepare-spin-on'));
  assert.ok(!(await page.title()).startsWith(title), await page.title());
  const kept = (await stored(page, 'events')).find(({ kind }) => kind === 'reading');
  assert.deepEqual([kept.value, kept.manner], ['29 N·m', 'as-card']);

  await openStep(page, 'tighten-drain');
  await tap(page, words('job.undo'));
  await untilSeen(page, words('job.undone'));
  await openStep(page, 'tighten-drain');
  await type(page, words('ask.torque'), '28 Nm');
  await untilSeen(page, words('job.done.at', { value: '28 Nm' }));
  assert.deepEqual(complaints, []);
});
