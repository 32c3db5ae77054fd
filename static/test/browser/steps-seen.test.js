// What is seen of a step before anybody scrolls: its title, its figures, what to do and
// what is entered first, on all steps of all sample bikes, upright and on its side.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { test } from 'node:test';
import { goTo, planOf, plantIn, startJob, stored } from './job-page.js';
import { openSite } from './open-site.js';
import { sampleCard } from './words.js';

const cards = readdirSync(new URL('../../../specs/cards/', import.meta.url))
  .map((file) => sampleCard(file.replace('.json', '')))
  .sort((a, b) => a.id.localeCompare(b.id));

/** How large the window is, and on how many of twenty steps all of it is seen at least. */
const sizes = {
  upright: { width: 360, height: 740, least: 19 },
  'on its side': { width: 740, height: 360, least: 15 },
};

const named = (list, of) => (list ?? []).map(({ id }) => id).filter((id) => of(id));

/** The days on which a bike is tried: the usual one, with all of its oils, and on the way home. */
const benches = ({ circuits, filters, strainers }) => ({
  usual: { system: 'metric', place: 'garage' },
  all: {
    system: 'us',
    place: 'garage',
    helper: true,
    circuits: circuits.map(({ id }) => id),
    also: [...named(filters, Boolean), ...named(strainers, Boolean)],
  },
  home: { system: 'metric', place: 'roadside', getHome: true },
});

/**
 * Runs in the page: goes through the steps of a job, and says of each what is not whole
 * inside the window or lies under a bar, and which cautions are not seen above the act.
 */
async function walk(job, steps) {
  const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
  const found = [];
  for (const id of steps) {
    location.hash = `#/job/${job}/step/${id}`;
    while (document.querySelector('.step')?.dataset.step !== id) await frame();
    scrollTo(0, 0);
    await frame();
    await frame();
    found.push({ id, ...unseen(document.querySelector('.step')) });
  }
  return found;

  function unseen(step) {
    const input = step.querySelector(
      ':is(.asks, .look, .tally, .timer) :is(input, select, textarea, button)',
    );
    const all = (selector, name) => [...step.querySelectorAll(selector)].map((e) => [name, e]);
    const parts = [
      ...all('h1', 'title'),
      ...all('.figures .value', 'figure'),
      ...all('.warn .sentence', 'caution'),
      ...all('.do', 'do'),
      ...(input ? [['input', input.closest('label') ?? input]] : []),
    ];
    const bars = [...document.querySelectorAll('body *')].filter((e) =>
      ['fixed', 'sticky'].includes(getComputedStyle(e).position),
    );
    const covered = (e) => {
      const { left, right, top, bottom } = e.getBoundingClientRect();
      if (top < 0 || left < 0 || bottom > innerHeight || right > innerWidth) return true;
      return bars.some((bar) => {
        const b = bar.getBoundingClientRect();
        const meets = b.top < bottom && b.bottom > top && b.left < right && b.right > left;
        return meets && b.height > 0 && !bar.contains(e);
      });
    };
    const act = step.querySelector('.do');
    const before = (e) => e.compareDocumentPosition(act) & Node.DOCUMENT_POSITION_FOLLOWING;
    const bottom = parts.map(([, e]) => e.getBoundingClientRect().bottom);
    return {
      out: [...new Set(parts.filter(([, e]) => covered(e)).map(([name]) => name))],
      late: [...step.querySelectorAll('.warn .sentence')]
        .filter((e) => !before(e) || !e.checkVisibility())
        .map((e) => e.innerText),
      bottom: Math.round(Math.max(...bottom)),
    };
  }
}

/** Runs in the page: takes all jobs out of the store, so that no other one has its line on top. */
const forgetJobs = () =>
  new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const lists = ['jobs', 'log', 'events'];
      const tx = opening.result.transaction(lists, 'readwrite');
      for (const list of lists) tx.objectStore(list).clear();
      tx.oncomplete = () => (opening.result.close(), resolve(undefined));
      tx.onabort = () => reject(tx.error);
    };
  });

test('what counts is seen without scrolling, on all steps of all sample bikes', async (t) => {
  const { page, complaints } = await openSite(t);
  await page.waitForSelector('h1');
  const counts = Object.fromEntries(Object.keys(sizes).map((size) => [size, { of: 0, whole: 0 }]));
  const amiss = [];
  const known = new Set(); // a step that another day has too is counted once
  for (const card of cards)
    for (const [day, bench] of Object.entries(benches(card))) {
      const plan = (input) => globalThis.tidysump.core.call('plan', input);
      const { ok } = await page.evaluate(plan, { card, bench });
      const steps = ok.steps.filter(({ after }) => !after);
      assert.ok(steps.length > 5, `${card.id}, ${day}`);
      const job = {
        id: 'tried',
        name: `${card.make} ${card.model}`,
        started: '2026-11-24T09:00:00.000Z',
      };
      const ids = ok.steps.map(({ id }) => id);
      for (const [size, { width, height }] of Object.entries(sizes)) {
        await goTo(page, '#/settings');
        await page.evaluate(forgetJobs);
        await plantIn(page, 'jobs', { ...job, card, bench, steps: ids, summary: {} });
        await page.setViewport({ width, height });
        await goTo(page, `#/job/${job.id}`);
        const found = await page.evaluate(
          walk,
          job.id,
          steps.map(({ id }) => id),
        );
        for (const [n, { id, out, late, bottom }] of found.entries()) {
          assert.deepEqual(late, [], `${card.id}, ${day}, ${id}: cautions that come late`);
          const like = JSON.stringify([card.id, size, steps[n]]);
          if (known.has(like)) continue;
          known.add(like);
          counts[size].of++;
          if (!out.length) counts[size].whole++;
          else amiss.push(`${size}: ${card.id}, ${day}, ${id}: ${out} to ${bottom} px`);
        }
      }
    }
  for (const line of amiss) t.diagnostic(line);
  for (const [size, { of, whole }] of Object.entries(counts)) {
    t.diagnostic(`${size}: on ${whole} of ${of} steps, ${((20 * whole) / of).toFixed(1)} of 20`);
  }
  for (const [size, { least }] of Object.entries(sizes)) {
    const { of, whole } = counts[size];
    assert.ok(whole / of >= least / 20, `${size}: ${whole} of ${of}`);
  }
  assert.deepEqual(complaints, []);
});

/** Runs in the page: opens where each figure of the step comes from. */
const openSources = () => {
  for (const source of document.querySelectorAll('.step .standing')) source.open = true;
};

/** Runs in the page: how far the title stands below where the job stands. */
const below = () => {
  const [head, title] = ['.head', 'h1'].map((part) =>
    document.querySelector(`.step ${part}`).getBoundingClientRect(),
  );
  return Math.round(title.top - head.bottom);
};

test('the figure that a step is for is larger than all else on it, and nothing pushes its title down', async (t) => {
  const { page, complaints } = await openSite(t);
  await page.setViewport(sizes.upright);
  await startJob(page, `${cards[0].make} ${cards[0].model}`);
  const [job] = await stored(page, 'jobs');
  const { steps } = await planOf(page, cards[0]);
  const withFigures = steps.filter(({ figures }) => figures);
  assert.ok(withFigures.length > 5);
  let large = 0;
  for (const { id } of withFigures) {
    const gaps = [];
    for (const size of ['upright', 'on its side']) {
      await page.setViewport(sizes[size]);
      await goTo(page, `#/job/${job.id}/step/${id}`);
      gaps.push(await page.evaluate(below));
      await page.evaluate(openSources);
      gaps.push(await page.evaluate(below));
    }
    assert.equal(new Set(gaps).size, 1, `${id}: the title stands ${gaps} px below`);
    await page.setViewport(sizes.upright);
    const letters = await page.$$eval('.step *', (all) =>
      all.map((e) => [Boolean(e.closest('.large')), parseFloat(getComputedStyle(e).fontSize)]),
    );
    const most = (of) => Math.max(...letters.filter(([is]) => is === of).map(([, size]) => size));
    if (!letters.some(([is]) => is)) continue; // words, or a figure that nobody knows
    large++;
    assert.ok(most(true) >= most(false), `${id}: ${most(true)} px of ${most(false)}`);
  }
  assert.ok(large > 5, `${large} large figures`);
  // What is at hand below stands in even rows.
  const high = await page.$$eval(
    '.at-hand :is(button.quiet, a.wrong, details:not([open]) > summary)',
    (all) => all.map((e) => e.offsetHeight),
  );
  assert.ok(high.length >= 3 && new Set(high).size === 1, `${high}`);
  assert.deepEqual(complaints, []);
});
