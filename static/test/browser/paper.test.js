// What is printed or handed on: the owner's sheet and the bench sheet.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { download } from './download.js';
import { tapAt } from './finger.js';
import { goTo, openStep, startJob, stored } from './job-page.js';
import { temporaryFolder } from './launch.js';
import { openSite } from './open-site.js';
import { printed } from './pdf.js';
import { enter, type, untilSeen } from './person.js';
import { keepPicture } from './photos-page.js';
import { sampleCard, sampleCards, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;
const plain = (text) => text.replace(/\s+/g, ' ');

/** A picture of 40 by 30 points, as a camera's app may give it. */
const png = (page) =>
  page.evaluate(async () => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 40, height: 30 });
    canvas.getContext('2d').fillRect(0, 0, 40, 30);
    return canvas.toDataURL('image/png').split(',')[1];
  });

test('the sheet for the owner is one page with what was done, found and measured', async (t) => {
  const { page, complaints } = await openSite(t);
  await startJob(page, bike);
  await enter(page, words('ask.odometer'), '12 400 km');
  await openStep(page, 'tighten-drain');
  await enter(page, words('ask.torque'), '28 Nm');
  await openStep(page, 'look-oil');
  await keepPicture(t, page, Buffer.from(await png(page), 'base64'), 'pan');
  const [{ id }] = await stored(page, 'jobs');
  await goTo(page, `#/sheet/${id}`);
  await type(page, words('paper.by'), 'Wren at the third gate');
  await page.keyboard.press('Tab');
  await untilSeen(page, `${words('paper.by')}: Wren at the third gate`);
  for (const format of ['A4', 'Letter']) {
    const pages = await printed(t, page, format);
    assert.equal(pages.length, 1, `${format}: ${pages.length} pages`);
    const asked = ['12400 km', '28 N·m', '22400 km', 'Wren at the third gate', bike];
    asked.push(plain(words('paper.no-promise')).slice(0, 40), words('paper.found'));
    asked.push(words('paper.due'), words('paper.readings'), words('ask.odometer'));
    for (const text of asked) assert.ok(pages[0].includes(text), `${text} in ${pages[0]}`);
    assert.ok(!pages[0].includes(words('nav.settings')), 'nothing of the screen round it');
  }
  await tapAt(page, 'input[type=checkbox]');
  await page.waitForSelector('.paper img');
  const file = await download(page, await temporaryFolder(t), words('paper.share'));
  assert.match(file.name, /^Tessaly-Corda-570.*\.html$/);
  assert.match(file.text, /<img src="data:image\/jpeg/, 'the photo travels within');
  assert.ok(file.text.replaceAll('&nbsp;', ' ').includes('28 N·m'));
  assert.deepEqual(complaints, []);
});

test('the bench sheet of every bike is one page, with figures to be read across the bench', async (t) => {
  const { page } = await openSite(t);
  const inPoints = (selector) =>
    page.$$eval(selector, (all) =>
      all.map((one) => parseFloat(getComputedStyle(one).fontSize) * 0.75),
    );
  for (const bike of sampleCards()) {
    const circuits = bike.circuits.map((circuit) => `circuits=${circuit.id}`).join('&');
    for (const [bench, format] of [
      ['?system=us', 'Letter'],
      [`?${circuits}`, 'A4'],
    ]) {
      await goTo(page, `#/bench-sheet/${bike.id}/card/${bench}`);
      await untilSeen(page, words('stage.settle'));
      const [sheet, ...others] = await printed(t, page, format);
      assert.deepEqual(others, [], `${bike.id} ${bench}: one page of ${format}`);
      for (const text of [bike.model, words('step.leak-look'), words('stage.fill')])
        assert.ok(sheet.includes(text), `${bike.id}: ${text} in ${sheet}`);
      await page.emulateMediaType('print');
      const sizes = await inPoints('.paper .large');
      assert.ok(sizes.length >= 2 && Math.min(...sizes) >= 18, `${bike.id}: ${sizes} pt`);
      assert.ok(Math.min(...(await inPoints('.paper .stages li'))) >= 7, `${bike.id}: steps`);
      await page.emulateMediaType(null);
    }
    const ticks = await page.$$eval('.stages section', (all) =>
      all.map((stage) => stage.querySelectorAll('.box').length),
    );
    assert.ok(ticks.length >= 6 && Math.min(...ticks) > 0, `${bike.id}: ticks by stage ${ticks}`);
  }
});
