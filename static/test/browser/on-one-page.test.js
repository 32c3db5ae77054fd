// The job on one page, told afterwards; and stage by stage.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { comesTo } from './comes-to.js';
import { tapFound } from './finger.js';
import { goTo, startJob, stored, tapDone } from './job-page.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { choose, seen, tap, tapText, type, typed, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

/** The number that all taps make together, those into a field among them. */
function counted(page) {
  const count = { taps: 0, numbers: 0 };
  const one = (act) => (count.taps++, act);
  return {
    count,
    tap: (name) => one(tap(page, name)),
    tapText: (text) => one(tapText(page, text)),
    tick: (id) => one(tick(page, id)),
    choose: (text) => one(choose(page, text)),
    type: (label, text) => (count.numbers++, one(type(page, label, text))),
  };
}

/** Ticks the line whose title begins so. */
async function tick(page, title) {
  const titled = (want) =>
    [...document.querySelectorAll('label.tick')].find((l) =>
      l.textContent.trim().toLowerCase().startsWith(want.toLowerCase()),
    );
  const find = (timeout) => page.waitForFunction(titled, { polling, timeout }, title);
  await tapFound(page, find, title);
}

const countOf = (page, part, lines = 'li') =>
  page.$$eval(`[data-part="${part}"] ${lines}`, (list) => list.length);

const eventsOf = async (page) =>
  (await stored(page, 'events')).sort((a, b) => (a.seq ?? 0) - (b.seq ?? 0));

test('one who knows tells a whole change of one oil in 12 taps and two numbers', async (t) => {
  const { page, complaints } = await openSite(t);
  await tapText(page, bike);
  const act = counted(page);
  await act.tap(words('plan.quick'));
  await untilSeen(page, words('page.part.opened'));
  await act.tapText(words('manner.as-card'));
  await act.tick(words('purpose.filter-can'));
  await act.tick(words('purpose.filler-cap'));
  await act.type(words('ask.poured'), '2,5 l');
  await act.choose(words('level.high'));
  await act.choose(words('seen.nothing'));
  await act.choose(words('leak.dry'));
  await act.type(words('ask.odometer'), '12 400 km');
  await act.tick(words('page.all', { count: await countOf(page, 'gates') }));
  await act.tick(words('page.rest', { count: await countOf(page, 'rest', 'details li') }));
  await act.tap(words('page.keep-finish'));
  await untilSeen(page, words('record.readings'));
  assert.ok(act.count.taps <= 12, `${act.count.taps} taps`);
  assert.equal(act.count.numbers, 2);

  const text = await seen(page);
  for (const value of ['12400 km', '2.5 L', '29 N·m', words('level.high'), words('leak.dry')])
    assert.ok(text.includes(value), `${value} in ${text}`);
  assert.ok(text.includes(words('manner.as-card')), text);
  assert.ok(text.includes(words('manner.afterwards')), text);
  const events = await eventsOf(page);
  for (const { kind, manner } of events)
    assert.equal(kind === 'finish' || manner.includes('afterwards'), true, `${kind}: ${manner}`);
  assert.equal(events.at(-1).kind, 'finish');
  assert.equal(new Set(events.map(({ seq }) => seq)).size, events.length);

  const [{ id }] = await stored(page, 'jobs');
  await goTo(page, `#/sheet/${id}`);
  await untilSeen(page, words('paper.closed'));
  const headings = await page.$$eval('h2, h3', (all) => all.map((one) => one.innerText.trim()));
  assert.ok(headings.includes(words('paper.closed')), headings.join());
  assert.ok(!headings.includes(words('paper.missing')), 'no step is missing');
  assert.deepEqual(complaints, []);
});

test('what is refused stands beside its line, and nothing that was filled in is lost', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  const [{ id }] = await stored(page, 'jobs');
  await goTo(page, `#/job/${id}/page`);
  await tick(page, words('purpose.filter-can'));
  await type(page, words('ask.torque'), 'four');
  await tap(page, words('page.keep'));
  await untilSeen(page, words('finding.not-a-number', { text: 'four' }));
  const beside = await page.$eval('.job-page [role="alert"]', (e) => e.closest('li').innerText);
  assert.ok(beside.toLowerCase().includes(words('purpose.drain-plug')), beside);
  assert.deepEqual(await stored(page, 'events'), []);

  await goTo(page, `#/job/${id}`);
  await goTo(page, `#/job/${id}/page`);
  await comesTo(() => typed(page, words('ask.torque')), 'four');
  await type(page, words('ask.torque'), '28 Nm');
  await tap(page, words('page.keep'));
  await untilSeen(page, words('page.kept'));
  await untilSeen(page, words('page.told', { value: '28 N·m' }));
  const events = await eventsOf(page);
  assert.deepEqual(
    events.filter(({ kind }) => kind === 'reading').map(({ value }) => value),
    ['28 Nm'],
  );

  // Told again it stands in place of what was told before.
  await type(page, words('ask.torque'), '29');
  await tap(page, words('page.keep'));
  await untilSeen(page, words('page.told', { value: '29 N·m' }));
  assert.ok(!(await seen(page)).includes('28 N·m'));
  assert.deepEqual(complaints, []);
});

test('stage by stage, changed to in the middle of a job, and back', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  await tapDone(page);
  await untilSeen(page, words('step.lay-out'));
  const [{ id }] = await stored(page, 'jobs');
  await goTo(page, `#/job/${id}/stage/ready`);
  await untilSeen(page, words('step.look-round'));
  const first = (title) =>
    page.evaluate(
      (want) =>
        [...document.querySelectorAll('label.tick')].find((l) => l.textContent.trim() === want)
          ?.control.checked,
      title,
    );
  const bikeIs = words('step.identify', { bike });
  assert.equal(await first(bikeIs), true, 'what was done step by step is ticked');
  await tick(page, words('step.lay-out'));
  await tap(page, words('page.keep-next', { stage: words('stage.warm') }));
  await untilSeen(page, words('step.key-out'));
  const after = await eventsOf(page);
  assert.deepEqual(
    after.map(({ step, manner }) => [step, manner]),
    [
      ['identify', undefined],
      ['lay-out', 'afterwards'],
    ],
  );

  await goTo(page, `#/job/${id}/stage/ready`);
  await untilSeen(page, words('step.lay-out'));
  await tick(page, words('step.lay-out'));
  await tap(page, words('page.keep'));
  await untilSeen(page, words('page.kept'));
  assert.equal((await eventsOf(page)).at(-1).kind, 'undo');
  await tap(page, words('page.steps'), 'link');
  await untilSeen(page, words('step.lay-out'));
  assert.deepEqual(complaints, []);
});
