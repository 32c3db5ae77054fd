// Looking at what came out: in the step, against the last time, and to scale.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo, plant, stored, tapDone, untilPast } from './job-page.js';
import { lookedThen, lookJob, lookNow } from './look-jobs.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import { answer, seen, tap, tapText, under, untilSeen } from './person.js';
import { words } from './words.js';

/** The page with an open job, at the step that looks at the magnet. */
async function atTheMagnet(t, ...before) {
  const { page, complaints } = await openSite(t);
  t.after(() => assert.deepEqual(complaints, []));
  await untilState(page, 'ready');
  for (const [record, events] of before) await plant(page, record, events);
  await plant(page, lookNow);
  await goTo(page, '#/job/now/step/look-magnet-drain');
  return page;
}

const found = (page, bit) => answer(page, words('ask.found'), words(`bit.${bit}`));

const looksKept = async (page) =>
  (await stored(page, 'events')).filter(({ kind, job: of }) => kind === 'look' && of === 'now');

test('a stop is kept by one tap, warns before the start and stands in the record and on the sheet', async (t) => {
  const page = await atTheMagnet(t);
  assert.ok(!(await seen(page)).includes(words('debris.unsaid')), 'nobody is judged unasked');
  await found(page, 'part');
  await untilSeen(page, words('debris.stop'));
  await untilSeen(page, words('next.no-start'));
  assert.deepEqual(await looksKept(page), [], 'nothing is kept before it is said so');
  await tap(page, words('look.keep'));
  await untilSeen(page, `✓ ${words('look.kept')}`);
  assert.deepEqual(
    (await looksKept(page)).map(({ signs }) => signs),
    [{ found: 'part' }],
  );

  await goTo(page, '#/job/now/step/decide');
  await untilSeen(page, words('debris.stop'));
  const decided = await seen(page);
  assert.ok(decided.includes(words('look.not-looked')), 'the oil is still to be told');
  for (const word of ['finding.debris-part', 'next.no-start', 'next.keep']) {
    assert.ok(decided.includes(words(word)), `${words(word)} in ${decided}`);
  }
  await goTo(page, '#/job/now/step/first-start');
  await untilSeen(page, words('caution.found-stop'));
  await tapDone(page);
  await untilPast(page, 'first-start');

  await goTo(page, '#/record/now');
  const record = await under(page, words('look.title'));
  for (const word of ['debris.stop', 'bit.part', 'finding.debris-part', 'next.keep']) {
    assert.ok(record.includes(words(word)), `${words(word)} in ${record}`);
  }
  const told = words('finding.run-despite-stop', { step: words('step.first-start') });
  assert.ok((await under(page, words('record.warnings'))).includes(told));
  await goTo(page, '#/sheet/now');
  await untilSeen(page, told);
  const watched = await under(page, words('paper.watch'));
  assert.ok(watched.includes(words('next.no-start')), watched);
  assert.ok(!watched.includes(words('paper.watch.level')), `nobody is sent for a ride: ${watched}`);
  const sheet = `${words('step.look-magnet')}. ${words('bit.part')}, ${words('debris.stop')}`;
  await untilSeen(page, sheet);
});

test('undone, the stop is gone and the form is empty; told anew, it is kept with the step', async (t) => {
  const page = await atTheMagnet(t);
  await found(page, 'part');
  await untilSeen(page, words('debris.stop'));
  await tap(page, words('look.keep'));
  await untilSeen(page, `✓ ${words('look.kept')}`);
  await tap(page, words('job.undo'));
  await untilSeen(page, words('job.undone'));
  assert.ok(!(await seen(page)).includes(words('debris.stop')));
  assert.equal(await page.$eval('select[name="found"]', (list) => list.value), '');
  await found(page, 'paste');
  await untilSeen(page, words('debris.partly'));
  await untilSeen(page, words('finding.debris-depth-unknown'));
  await answer(page, words('ask.depth'), words('bit-size.half'));
  await untilSeen(page, words('debris.normal'));
  await goTo(page, '#/job/now/steps');
  await goTo(page, '#/job/now/step/look-magnet-drain');
  await untilSeen(page, words('debris.normal')); // what was entered and not saved is still there
  await tapDone(page);
  await untilSeen(page, words('step.look-filter'));
  const [, undone, kept] = (await stored(page, 'events')).sort((a, b) =>
    a.time < b.time ? -1 : 1,
  );
  assert.deepEqual(
    [undone.kind, kept.kind, kept.signs],
    ['undo', 'look', { found: 'paste', depth: 'half' }],
  );
});

test('a second job on the bike is compared with the first, and the person has the last word', async (t) => {
  const page = await atTheMagnet(t, lookedThen, [
    {
      ...lookJob('other', '2026-06-01T08:00:00.000Z', '2026-06-01T10:00:00.000Z'),
      card: { ...lookNow.card, id: 'other' },
    },
  ]);
  await found(page, 'glitter');
  const compared = words('finding.look-more', {
    at: '12340 km',
    found: words('bit.fuzz'),
    verdict: words('debris.partly'),
  });
  await untilSeen(page, compared);
  await untilSeen(page, words('debris.stop'));
  await tap(page, words('look.not-more'));
  await untilSeen(page, words('debris.watch'));
  await tap(page, words('look.keep'));
  await untilSeen(page, `✓ ${words('look.kept')}`);
  const [{ signs }] = await looksKept(page);
  assert.deepEqual(signs, { found: 'glitter', more: 'no' });
  await found(page, 'paste');
  await untilSeen(
    page,
    words('finding.look-less', {
      at: '12340 km',
      found: words('bit.fuzz'),
      verdict: words('debris.partly'),
    }),
  );
});

test('what was to be watched and is there again is to stop, unless it was mended', async (t) => {
  const signs = { found: 'glitter', colour: 'bright' };
  const [then, [first, look, last]] = lookedThen;
  const page = await atTheMagnet(t, [then, [first, { ...look, signs }, last]]);
  await found(page, 'glitter');
  await untilSeen(page, words('finding.debris-again'));
  await untilSeen(page, words('debris.stop'));
  await tap(page, words('look.not-again'));
  await untilSeen(page, words('debris.watch'));
  await tap(page, words('look.as-compared'));
  await untilSeen(page, words('debris.stop'));
});

test('an answer of an earlier version stands as it was given', async (t) => {
  const page = await atTheMagnet(t);
  await plant(page, lookNow, [
    {
      id: 'old',
      time: '2026-11-25T09:10:00.000Z',
      kind: 'look',
      step: 'look-oil',
      signs: { found: 'nothing', oil: 'fuel', noise: 'yes', lamp: 'no' },
    },
  ]);
  await page.reload();
  await goTo(page, '#/job/now/step/look-oil');
  await untilSeen(page, words('finding.debris-fuel-either'));
  for (const [name, value, word] of [
    ['oil', 'fuel', 'oil-look.fuel'],
    ['noise', 'yes', 'new-noise.yes'],
  ]) {
    const shown = await page.$eval(`select[name="${name}"]`, (list) => [
      list.value,
      list.selectedOptions[0].textContent.trim(),
    ]);
    assert.deepEqual(shown, [value, words(word)]);
  }
  assert.ok(!(await seen(page)).includes(words('finding.debris-lamp')));
  assert.equal(await page.$$eval('.look :checked[type="checkbox"]', (ticked) => ticked.length), 0);
  await answer(page, words('ask.oil'), words('oil-look.fuel-smell'));
  await untilSeen(page, words('finding.debris-fuel-smell'));
  const offered = await page.$$eval('select[name="oil"] option', (list) =>
    list.map((o) => o.value),
  );
  assert.ok(!offered.includes('fuel'), 'once taken back, it is not offered any more');
});

test('the depth of a fur is measured on the screen', async (t) => {
  const page = await atTheMagnet(t);
  await found(page, 'fuzz');
  await tapText(page, words('gauge.title'));
  await tap(page, words('gauge.match'));
  const slider = await page.waitForSelector(`::-p-aria([name="${words('gauge.edge')}"])`);
  await slider.focus();
  await page.keyboard.press('End');
  await tap(page, words('gauge.keep'));
  await untilSeen(page, words('gauge.true'));
  await tap(page, '5\u00a0mm');
  await untilSeen(page, words('finding.debris-deep'));
  assert.equal(await page.$eval('select[name="depth"]', (list) => list.value), 'five');
});

const edge = 320;

test('the gauge is matched to a card by keyboard, and then true to scale', async (t) => {
  const page = await atTheMagnet(t);
  await found(page, 'flakes');
  await tapText(page, words('gauge.title'));
  await untilSeen(page, words('gauge.not-set'));
  assert.equal(await page.$eval('.marks button', (mark) => mark.disabled), true);
  await tap(page, words('gauge.match'));
  const slider = await page.waitForSelector(`::-p-aria([name="${words('gauge.edge')}"])`);
  await slider.focus();
  await page.keyboard.press('End');
  for (let left = (await slider.evaluate((s) => Number(s.value))) - edge; left > 0; left -= 0.5) {
    await page.keyboard.press('ArrowLeft');
  }
  await slider.evaluate((s) => s.scrollIntoView());
  const lines = (want) => {
    const box = document.querySelector('.true-ruler .card rect').getBoundingClientRect();
    return box.width === want;
  };
  await page.waitForFunction(lines, { polling }, edge);
  for (const name of ['gauge.smaller', 'gauge.larger', 'gauge.keep']) {
    const button = await page.waitForSelector(`::-p-aria([name="${words(name)}"][role="button"])`);
    const { height } = await button.boundingBox();
    assert.ok(height >= 56, `${name}: ${height} px high`);
  }
  await tap(page, words('gauge.larger'));
  await page.waitForFunction(lines, { polling }, edge + 0.5);
  await tap(page, words('gauge.smaller'));
  await page.waitForFunction(lines, { polling }, edge);
  await tap(page, words('gauge.keep'));
  await untilSeen(page, words('gauge.marks'));
  await untilSeen(page, words('gauge.true'));

  const across = await page.$$eval('.marks circle, .marks rect', (shapes) =>
    shapes.map((s) => s.getBoundingClientRect().width),
  );
  // ISO/IEC 7810 ID-1: the short edge is 53.98 mm.
  const want = [0.5, 1, 2, 5, 10].flatMap((mm) => [mm, mm]).map((mm) => (mm * edge) / 53.98);
  want.forEach((px, n) => assert.ok(Math.abs(across[n] - px) < 0.02, `${across[n]}, want ${px}`));

  await tap(page, '5\u00a0mm');
  await untilSeen(page, words('finding.debris-large'));
  assert.equal(await page.$eval('select[name="size"]', (list) => list.value), 'five');

  // Zoomed as with the keys: fewer and larger CSS pixels.
  await page.setViewport({ width: 300, height: 617, deviceScaleFactor: 1.2 });
  await untilSeen(page, words('gauge.zoomed'));
  assert.equal(await page.$eval('.marks button', (mark) => mark.disabled), true);
  await page.setViewport({ width: 360, height: 740, deviceScaleFactor: 1 });
  await untilSeen(page, words('gauge.true'));
  // And without telling the page: it asks before it takes an answer.
  await page.setViewport({ width: 360, height: 740, deviceScaleFactor: 2 });
  await tap(page, '1\u00a0mm');
  await untilSeen(page, words('gauge.zoomed'));
  assert.equal(await page.$eval('select[name="size"]', (list) => list.value), 'five');
  await page.setViewport({ width: 360, height: 740, deviceScaleFactor: 1 });
  await page.reload();
  await untilSeen(page, words('look.title'));
  await found(page, 'flakes');
  await tapText(page, words('gauge.title'));
  await untilSeen(page, words('gauge.true'));
});
