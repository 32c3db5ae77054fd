// A bike is one machine: twins of one model are told apart, each has its own record and its
// own figures, and what was entered twice becomes one.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { beginBike } from './bike-page.js';
import { comesTo } from './comes-to.js';
import { done, goTo, plantIn, startJob, stored, untilStep } from './job-page.js';
import { openSite, openWithoutServer } from './open-site.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { answer, heading, seen, tap, tapText, type, typed, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const model = `${card.make} ${card.model}`;

const begin = (page, told) => beginBike(page, card.id, told);

const asked = { called: 'Bertha', plate: 'AB-12CD', words: 'red tank' };

test('a bike is told from its twin, and found by plate, name and words', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilSeen(page, model);
  const id = await begin(page, asked);
  await begin(page, { called: 'Anna', plate: 'EF-34' });
  await goTo(page, '#/bikes');
  await untilSeen(page, 'Bertha');
  for (const text of ['Bertha · AB-12CD', 'Anna · EF-34', 'red tank', model])
    assert.ok((await seen(page)).includes(text), text);
  for (const find of ['ab12', 'bertha', 'tank red', '12cd corda']) {
    await type(page, words('bikes.search'), find);
    await page.waitForFunction(() => !document.body.innerText.includes('Anna'), { polling });
    assert.ok((await seen(page)).includes('Bertha'), find);
  }
  await tapText(page, 'Bertha');
  await untilSeen(page, words('plan.start'));
  assert.equal(await heading(page), `Bertha · AB-12CD · ${model}`);
  await untilSeen(page, 'Anna');
  await tap(page, words('plan.start'));
  await untilStep(page, 1);
  const [job] = await stored(page, 'jobs');
  assert.equal(job.bike, id);
  await goTo(page, '#/bikes');
  await untilSeen(page, `${words('bikes.resume')}: Bertha`);
  assert.deepEqual(complaints, []);
});

test('whoever has one bike meets nothing new on the first screen', async (t) => {
  const { page } = await openSite(t);
  await startJob(page, model);
  await goTo(page, '#/bikes');
  await untilSeen(page, words('bikes.resume'));
  const text = await seen(page);
  assert.ok(!text.includes(words('bikes.from')));
});

test('a job that is begun on a card with several bikes asks on which', async (t) => {
  const page = await openWithoutServer(t);
  await untilSeen(page, model);
  const id = await begin(page, asked);
  await goTo(page, `#/bike/${card.id}`);
  await tap(page, words('plan.start'));
  await untilSeen(page, words('bike.which'));
  assert.deepEqual(await stored(page, 'jobs'), []);
  await tapText(page, 'Bertha'); // the first of them, above the links to the other bikes
  await untilStep(page, 1);
  const jobs = await stored(page, 'jobs');
  assert.deepEqual(
    jobs.map(({ bike }) => bike),
    [id],
  );
});

test('what is refused stands beside its field, and nothing typed is lost', async (t) => {
  const { page } = await openSite(t);
  await untilSeen(page, model);
  await goTo(page, `#/details/${card.id}`);
  await untilSeen(page, words('details.told'));
  await type(page, words('details.tell.called'), '   ');
  await page.keyboard.press('Enter');
  await tapText(page, words('details.figure.add'));
  await type(page, words('details.figure.value'), 'a lot');
  await answer(
    page,
    words('details.figure.what'),
    `${words('own.volume')} · ${words('role.engine')}`,
  );
  await tap(page, words('details.figure.keep'));
  await page.waitForSelector('.finding[data-grade="refuse"]');
  await comesTo(() => typed(page, words('details.figure.value')), 'a lot');
  assert.deepEqual(await stored(page, 'facts'), []);
  await page.reload();
  await untilSeen(page, words('draft.written'));
  await comesTo(() => typed(page, words('details.figure.value')), 'a lot');
});

test('a bike that was entered twice becomes one, and two again', async (t) => {
  const { page } = await openSite(t);
  await untilSeen(page, model);
  await startJob(page, model);
  await done(page, 1);
  const id = await begin(page, asked);
  await tapText(page, words('details.join'));
  await answer(page, words('details.join.which'), model);
  await untilSeen(page, words('details.join.keeps', { name: `Bertha · AB-12CD · ${model}` }));
  await tap(page, words('details.join.go'));
  await untilSeen(page, words('details.joined', { name: model }));
  await goTo(page, '#/record');
  await untilSeen(page, 'Bertha');
  await goTo(page, `#/details/${id}`);
  await untilSeen(page, words('details.jobs'));
  await tap(page, words('details.part'));
  await untilSeen(page, words('details.parted'));
  assert.ok(!(await seen(page)).includes(words('details.jobs')));
  await goTo(page, '#/record');
  await untilSeen(page, model);
  await page.waitForFunction(() => !document.body.innerText.includes('Bertha'), { polling });
});

test('a job goes to the bike that it was on, and a sold bike goes out of the list', async (t) => {
  const { page } = await openSite(t);
  await untilSeen(page, model);
  await startJob(page, model);
  const id = await begin(page, asked);
  await goTo(page, `#/details/${card.id}`);
  await untilSeen(page, words('details.jobs'));
  await tapText(page, words('details.job.move'));
  await answer(page, words('details.job.to'), `Bertha · AB-12CD · ${model}`);
  await tap(page, words('details.job.go'));
  await untilSeen(page, words('details.job.moved'));
  await goTo(page, `#/details/${id}`);
  await untilSeen(page, words('details.jobs'));
  await tapText(page, words('details.aside.lay'));
  await tap(page, words('details.aside.lay'));
  await untilSeen(page, words('details.aside.laid'));
  await goTo(page, '#/bikes');
  await untilSeen(page, words('bikes.aside', { count: 1 }));
  await type(page, words('bikes.search'), 'bertha');
  await untilSeen(page, words('bike.aside.sold'));
  await goTo(page, `#/details/${id}`);
  await tap(page, words('details.aside.take-up'));
  await untilSeen(page, words('details.aside.back'));
  await goTo(page, '#/bikes');
  await untilSeen(page, 'AB-12CD');
});

/** Keeps an own card as the page does, with so much oil. */
async function keepOwn(page, id, litres) {
  const own = structuredClone({ ...card, id, invented: undefined });
  own.circuits[0].withFilter.value = litres;
  const changed = new Date().toISOString();
  const line = { key: 'own', bike: { id, name: model, layout: 'layout.wet-sump' }, changed };
  await plantIn(page, 'cards', { ...line, card: own, text: JSON.stringify(own) });
  await plantIn(page, 'lines', line);
}

test('a corrected card is offered, and the plan stays with the one used last until it is taken', async (t) => {
  const { page } = await openSite(t);
  await untilSeen(page, model);
  await keepOwn(page, 'own-card', 2.5);
  const id = await beginBike(page, 'own', asked);
  const planned = async () => {
    await goTo(page, `#/bike/${id}`);
    await untilSeen(page, words('plan.start'));
  };
  await planned();
  await tap(page, words('plan.start'));
  await untilStep(page, 1);
  await planned();
  assert.ok(!(await seen(page)).includes(words('bike.corrected')), 'it is the same card');

  await keepOwn(page, 'own-card', 2.7);
  await planned();
  await untilSeen(page, words('bike.corrected'));
  await tapText(page, words('bike.corrected.changes', { count: 1 }));
  await untilSeen(page, '2.5 L');
  await untilSeen(page, '2.7 L');
  await untilOnPlate(page, '2.5 L');
  await tap(page, words('bike.corrected.take'));
  await untilSeen(page, words('bike.corrected.taken'));
  await page.waitForFunction(() => !document.querySelector('.corrected'), { polling });
  await untilOnPlate(page, '2.7 L');
  await tap(page, words('plan.start'));
  await untilStep(page, 1);
  await planned();
  assert.ok(!(await seen(page)).includes(words('bike.corrected')), 'the last job had it');
});

/** Waits until the plate says first that so much oil goes in. */
const untilOnPlate = (page, volume) =>
  page.waitForFunction(
    (want) => document.querySelector('.plate > div')?.innerText.replace(/\s+/g, ' ').includes(want),
    { polling, timeout: patience() },
    volume,
  );
