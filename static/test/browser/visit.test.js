// A customer's visit, from arrival to signature and label, without a network.
import assert from 'node:assert/strict';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { chooseSmallPicture } from './choose-file.js';
import { comesTo } from './comes-to.js';
import { goTo, openStep, plantIn, plantSetting, startJob, stored } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { printed } from './pdf.js';
import { answer, choose, enter, seen, tap, tapText, type, typed, untilSeen } from './person.js';
import { startAgain, visitOnce } from './restart.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;
const shots = process.env.SHOTS; // a folder for pictures of the screens

const shot = async (page, name) =>
  shots && page.screenshot({ path: join(shots, `${name}.png`), fullPage: true });

/** Draws some lines in the field to sign in. */
async function sign(page) {
  const pad = await page.waitForSelector('.pad');
  await pad.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const { x, y, width, height } = await pad.boundingBox();
  const at = (across, down) => [x + width * across, y + height * down];
  await page.mouse.move(...at(0.2, 0.5));
  await page.mouse.down();
  for (const [across, down] of [
    [0.3, 0.2],
    [0.4, 0.7],
    [0.5, 0.3],
    [0.7, 0.6],
  ])
    await page.mouse.move(...at(across, down), { steps: 5 });
  await page.mouse.up();
}

/** Enters a day or a time, which a browser asks for in its own way. */
const pick = async (page, id, value) => {
  const input = await page.waitForSelector(`#${id}`);
  await input.evaluate((element, text) => {
    element.value = text;
    element.dispatchEvent(new Event('change', { bubbles: true }));
  }, value);
};

const visitFacts = async (page) => (await stored(page, 'facts')).filter((f) => f.book === 'visit');

test('a customer’s visit, from arrival to signature and label, without a network', async (t) => {
  const profile = await temporaryFolder(t);
  const url = await visitOnce(t, profile);
  const { page, complaints } = await startAgain(t, profile, url);
  await page.setViewport({ width: 360, height: 740 });
  await startJob(page, bike);
  const [{ id }] = await stored(page, 'jobs');
  assert.ok(!(await seen(page)).includes(words('visit.title')), 'a rider meets no visit');
  await plantSetting(page, 'forOthers', true);
  await page.reload();
  await goTo(page, `#/job/${id}`);
  await tap(page, words('visit.title'), 'link');

  await t.test(
    'arrival: what is typed is a draft, then kept; what is wrong is said at its field',
    async () => {
      await untilSeen(page, words('visit.stage.begun'));
      await type(page, words('visit.ask.wish'), 'Oil, and it rattles when cold.');
      await type(page, words('visit.ask.odometer'), 'far');
      await answer(page, words('visit.ask.fuel'), words('visit.fuel.half'));
      await type(page, words('visit.ask.keys'), 'one, red tag');
      await type(page, words('visit.ask.agreed'), 'Oil and filter.');
      await type(page, words('visit.ask.most'), '120,00');
      await type(page, words('bill.ask.currency'), 'eur');
      await pick(page, 'visit-promised-date', '2030-11-30');
      await pick(page, 'visit-promised-time', '17:00');
      await tap(page, words('visit.arrival.keep'));
      await untilSeen(page, words('finding.not-a-number', { text: 'far' }));
      await comesTo(() => typed(page, words('visit.ask.odometer')), 'far', 'it is not lost');
      await shot(page, 'arrival');
      await type(page, words('visit.ask.odometer'), '34 210 km');
      await tap(page, words('visit.arrival.keep'));
      await untilSeen(page, words('visit.kept'));
      await untilSeen(page, words('visit.stage.agreed'));
      assert.equal((await visitFacts(page)).length, 7);
    },
  );

  await t.test('the look round, with a photo', async () => {
    await tapText(page, words('visit.found.add'));
    await answer(page, words('visit.ask.found'), words('visit.found.damaged'));
    await type(page, words('visit.ask.found.text'), 'Scratch on the tank, left.');
    await chooseSmallPicture(page, '#photo-choose-visit-found');
    await untilSeen(page, `${words('visit.found.damaged')}: Scratch on the tank, left.`);
    await page.waitForSelector('.photos img');
    assert.equal((await stored(page, 'photos')).length, 1);
  });

  await t.test('signed for what was agreed', async () => {
    await sign(page);
    await type(page, words('visit.sign.name'), 'A. Rider');
    await shot(page, 'signing');
    await tap(page, words('visit.sign.keep'));
    await untilSeen(page, words('visit.sign.kept'));
    await page.waitForSelector('.signature path[d^="M"]');
  });

  await t.test('trouble stands in front until the customer has decided', async () => {
    await tapText(page, words('visit.trouble.add'));
    await type(page, words('visit.ask.trouble.text'), 'Fork seal leaks.');
    await type(page, words('visit.ask.price'), '45');
    await tap(page, words('visit.trouble.keep'));
    const first = words('visit.ask-first', { count: 1 });
    await untilSeen(page, first);
    await goTo(page, `#/job/${id}`);
    await untilSeen(page, first);
    await shot(page, 'job');
    const now = Date.now();
    const [time, until] = [now, now + 3_600_000].map((at) => new Date(at).toISOString());
    const timer = { kind: 'timer', step: 'first-start', what: 'idle', until };
    await plantIn(page, 'events', { ...timer, id: 'timer', job: id, time, seq: 1000 });
    await goTo(page, '#/visits');
    await untilSeen(page, words('timer.idle'));
    await untilSeen(page, words('visit.stage.asking'));
    await shot(page, 'visits');
    await tapText(page, words('visit.stage.asking'));
    await untilSeen(page, first);
    await choose(page, words('visit.answer.yes'));
    await answer(page, words('visit.ask.way'), words('visit.how.phone'));
    await shot(page, 'trouble');
    await tap(page, words('visit.answer.keep'));
    await untilSeen(page, /165[.,]00/);
    assert.ok(!(await seen(page)).includes(first));
  });

  await t.test('what is agreed otherwise after it was signed is told', async () => {
    await tapText(page, words('visit.arrival.form'));
    await type(page, words('visit.ask.agreed'), 'Oil, filter, chain.');
    await tap(page, words('visit.arrival.keep'));
    const changed = words('visit.sign.changed', { what: words('visit.changed.agreed') });
    await untilSeen(page, changed);
    const facts = await visitFacts(page);
    const last = facts.find((f) => f.text === 'Oil, filter, chain.');
    assert.ok(last.seq > facts.find((f) => f.kind === 'signed').seq);
  });

  await t.test('signed and handed over; each can be taken back', async () => {
    await sign(page);
    await tap(page, words('visit.sign.keep'));
    await page.waitForFunction(() => document.querySelectorAll('.signature').length === 2);
    await tap(page, words('visit.hand-over'));
    await untilSeen(page, words('visit.stage.gone'));
    const takeBack = await page.$$(
      `::-p-aria([name="${words('visit.take-back')}"][role="button"])`,
    );
    await takeBack.at(-1).evaluate((button) => button.click());
    await untilSeen(page, words('job.undone'));
    assert.ok(!(await seen(page)).includes(words('visit.stage.gone')));
    await tap(page, words('visit.bring-back'));
    await untilSeen(page, words('visit.stage.gone'));
    await shot(page, 'handed');
  });

  await t.test('the owner’s sheet tells all of it on one page', async () => {
    await openStep(page, 'identify');
    await enter(page, words('ask.odometer'), '34 210 km');
    await openStep(page, 'pour-engine');
    await enter(page, words('ask.poured'), '3,4 l');
    await untilSeen(page, '3.4 L');
    await goTo(page, `#/sheet/${id}`);
    await untilSeen(page, words('visit.paper.signed'));
    await shot(page, 'sheet');
    const asked = ['rattles', 'red tag', 'Scratch', 'chain.', 'Fork seal leaks.'];
    const ofPersons = ['rattles', 'chain.', 'A. Rider'];
    if (shots) await writeFile(join(shots, 'sheet.pdf'), await page.pdf({ format: 'A4' }));
    for (const format of ['A4', 'Letter']) {
      const pages = await printed(t, page, format);
      assert.equal(pages.length, 1, `${format}: ${pages.length} pages`);
      for (const text of [...asked, 'A. Rider'])
        assert.ok(pages[0].includes(text), `${text} in ${pages[0]}`);
    }
    await choose(page, words('visit.paper.persons'));
    const [without] = await printed(t, page, 'A4');
    for (const text of ofPersons) assert.ok(!without.includes(text), `${text} in ${without}`);
    assert.ok(without.includes('Fork seal leaks.') && without.includes('Scratch'));
  });

  await t.test('the label says what went in and when the next is due', async () => {
    await goTo(page, `#/label/${id}`);
    await untilSeen(page, words('label.next'));
    await shot(page, 'label');
    for (const text of ['3.4 L', '34210 km', '44210 km'])
      assert.ok(
        (await seen(page)).replaceAll(' ', ' ').includes(text),
        `${text} in ${await seen(page)}`,
      );
    await choose(page, words('label.size', { wide: 62, high: 29 }));
    const pdf = await page.pdf({ preferCSSPageSize: true });
    if (shots) await writeFile(join(shots, 'label.pdf'), pdf);
    // 62 × 29 mm in points of 1/72 inch.
    assert.match(Buffer.from(pdf).toString('latin1'), /MediaBox \[0 0 175\.?\d* 8[12]\.?\d*\]/);
  });

  assert.deepEqual(complaints, []);
});
