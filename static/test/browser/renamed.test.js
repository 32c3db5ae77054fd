import assert from 'node:assert/strict';
import { test } from 'node:test';
import { exportEdition } from './editions.js';
import { startFolderHost } from './folder-host.js';
import { done, goTo, startJob, stored, untilStep } from './job-page.js';
import { doneTo } from './job-walk.js';
import { openBrowser } from './launch.js';
import { stateOf, untilState } from './page.js';
import { tapText, untilSeen } from './person.js';
import { exportRenamed } from './renamed-step.js';
import { words } from './words.js';

/** Agrees to the edition that the host has now; resolves when the page is of it. */
async function update(page, version) {
  await page.evaluate(() => globalThis.tidysump.offline.check());
  await untilState(page, 'waiting');
  await Promise.all([
    page.waitForNavigation(),
    page.evaluate(() => globalThis.tidysump.offline.takeOver()),
  ]);
  await untilState(page, 'ready');
  assert.notEqual((await stateOf(page)).version, version);
}

for (const known of [true, false])
  test(`a job half done goes on with its plan when a step is called otherwise, ${known ? 'and the version knows it' : 'and nobody wrote down how'}`, async (t) => {
    const now = await exportEdition(t);
    const renamed = await exportRenamed(t, 'lay-out', 'set-out', known);
    const host = await startFolderHost(t, now);
    const page = await (await openBrowser(t)).newPage();
    await page.goto(host.url);
    await untilState(page, 'ready');
    const { version } = await stateOf(page);
    await startJob(page, 'Corda');
    const [before] = await stored(page, 'jobs');
    const at = before.steps.indexOf('lay-out') + 1;
    assert.ok(at > 0, before.steps.join(' '));
    await doneTo(page, 1, at + 1);

    host.folder = renamed;
    await update(page, version);
    await goTo(page, '#/bikes');
    await untilSeen(page, words('bikes.resume')); // the job, and not the bike, which stands there first
    await tapText(page, 'Corda');
    await untilStep(page, at + 1);
    const [after] = await stored(page, 'jobs');
    assert.deepEqual(after.steps, before.steps, 'the plan is the one that it began with');
    await goTo(page, `#/job/${after.id}/step/lay-out`);
    await untilStep(page, at);
    await untilSeen(
      page,
      known ? words('step.lay-out') : words('step.other-version', { id: 'lay-out' }),
    );
    await goTo(page, `#/job/${after.id}/step/${before.steps[at]}`);
    await done(page, at + 1);
    const events = await stored(page, 'events');
    assert.ok(events.some(({ kind, step }) => kind === 'done' && step === 'lay-out'));

    const today = await page.evaluate(
      async (job) =>
        (await globalThis.tidysump.core.call('plan', job)).ok.steps.map(({ id }) => id),
      { card: after.card, bench: after.bench },
    );
    assert.ok(
      today.includes('set-out') && !today.includes('lay-out'),
      'a job of today has the new name',
    );
  });
