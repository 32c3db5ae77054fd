// Stores as each released version of the program wrote them (testdata/stores, recorded
// while a person worked with it): a job half done, one that waits for its second look,
// one closed, with cards and photos since there are any. All open, go on, and lose nothing.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { goTo, stored, tapDone, untilStep } from './job-page.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { patience } from './patience.js';
import { seen, untilSeen } from './person.js';
import { words } from './words.js';

const recorded = [1, 2, 3, 4].map((version) =>
  JSON.parse(
    readFileSync(new URL(`../../../testdata/stores/${version}.json`, import.meta.url), 'utf8'),
  ),
);

/** Runs in the page: makes the store as it was recorded. */
const make = ({ version, stores }) =>
  new Promise((resolve, reject) => {
    const opening = indexedDB.open('tidysump', version);
    opening.onerror = () => reject(opening.error);
    opening.onupgradeneeded = () => {
      for (const [name, { keyPath, indexes, keys, records }] of Object.entries(stores)) {
        const store = opening.result.createObjectStore(name, keyPath ? { keyPath } : {});
        for (const [index, path] of indexes) store.createIndex(index, path);
        for (const [n, record] of records.entries()) {
          if (record?.blob) {
            const letters = atob(record.blob.base64);
            const bytes = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
            record.blob = new Blob([bytes], { type: 'image/jpeg' });
          }
          if (keyPath) store.put(record);
          else store.put(record, keys[n]);
        }
      }
    };
    opening.onsuccess = () => (opening.result.close(), resolve());
  });

/** Runs in the page: all settings by their keys. */
const settingsOf = () =>
  new Promise((resolve) => {
    const opening = indexedDB.open('tidysump');
    opening.onsuccess = () => {
      const store = opening.result.transaction('settings').objectStore('settings');
      const [keys, values] = [store.getAllKeys(), store.getAll()];
      values.onsuccess = () => {
        opening.result.close();
        resolve(Object.fromEntries(keys.result.map((key, n) => [key, values.result[n]])));
      };
    };
  });

/** The events of a store, those that came in as a whole and those added one by one. */
const eventsOf = ({ events, bundles }) => [
  ...events.records,
  ...(bundles?.records ?? []).flatMap(({ job, events: all }) => all.map((e) => ({ ...e, job }))),
];

/** Settings that say which version of the app was here last. */
const ofVersion = new Set(['seenChange', 'planned']);

const byID = (a, b) => (a.job + a.id < b.job + b.id ? -1 : 1);

/** The steps that were done when the job was recorded: those not taken back, each once. */
function doneOf(events) {
  const undone = new Set(events.filter(({ kind }) => kind === 'undo').map(({ of }) => of));
  const done = events.filter(({ kind, id }) => kind === 'done' && !undone.has(id));
  return new Set(done.map(({ step }) => step));
}

/** What the page's core makes of a job as it lies in the store. */
const stateOf = async (page, job, events) => {
  const { card, bench, steps, started } = job;
  const input = { card, bench, steps, started, events: events.map(({ job: _, ...e }) => e) };
  const { ok } = await page.evaluate((i) => globalThis.tidysump.core.call('replay', i), input);
  return ok;
};

/** The step that stands in the place of a retired one in today's plan. */
const heirOf = (step, known) =>
  [...known].find((id) => id.replace(/^filter-on-(torque|turn|hand)-/, 'filter-on-') === step);

for (const { version, stores } of recorded)
  test(`a store of version ${version}: every job opens, goes on, and nothing is lost`, async (t) => {
    const { page, complaints } = await openSite(t, async (page, url) => {
      await page.goto(`${url}card.schema.json`);
      await page.evaluate(make, { version, stores });
    });
    const kept = (name) => stores[name]?.records ?? [];
    const jobs = kept('jobs');
    const half = jobs.find(({ name }) => /Marrowick/.test(name));
    await untilSeen(page, `${words('bikes.resume')}: ${half.name}`);
    await page.waitForFunction(() => document.documentElement.dataset.theme === 'dark', {
      polling,
      timeout: patience(),
    });
    if (kept('cards').length) await untilSeen(page, 'Plainford Heron 500');

    const planned = async () =>
      (await stored(page, 'jobs')).every((j) => j.steps || j.summary.finished);
    for (const from = Date.now(); !(await planned());)
      assert.ok(Date.now() - from < patience(), 'the steps of jobs under way are not kept');

    assert.deepEqual((await stored(page, 'events')).sort(byID), kept('events').sort(byID));
    const bare = ({ steps: _, ...job }) => job;
    const now = await stored(page, 'jobs');
    assert.deepEqual(now.map(bare).sort(byID), jobs.map(bare).sort(byID));
    for (const { id, steps } of jobs)
      if (steps) assert.deepEqual(now.find((job) => job.id === id).steps, steps, id);
    assert.deepEqual(await stored(page, 'cards'), kept('cards'));
    const { seenChange, ...settings } = await page.evaluate(settingsOf);
    for (const [n, key] of stores.settings.keys.entries())
      if (!ofVersion.has(key)) assert.deepEqual(settings[key], stores.settings.records[n], key);
    assert.ok(seenChange);
    assert.deepEqual(
      (await stored(page, 'photos')).map(({ job, id, bytes }) => [job, id, bytes]),
      kept('photos').map(({ job, id, bytes }) => [job, id, bytes]),
    );
    assert.equal((await stored(page, 'log')).length, jobs.length);

    // Each finds its bike, which its card implies, and nothing is told of that yet.
    for (const { id, bike } of await stored(page, 'log'))
      assert.equal(bike, jobs.find((job) => job.id === id).card.id);
    assert.deepEqual([await stored(page, 'facts'), await stored(page, 'bikes')], [[], []]);
    for (const list of ['bundles', 'beside', 'aside', 'drafts'])
      assert.deepEqual(await stored(page, list), kept(list), list);

    for (const job of await stored(page, 'jobs')) {
      const events = eventsOf(stores).filter((event) => event.job === job.id);
      const state = await stateOf(page, job, events);
      const known = new Set([
        ...(state.done ?? []),
        ...(state.elsewhere ?? []).map(({ step }) => step),
      ]);
      const told = doneOf(events);
      assert.equal(known.size, told.size, `${job.name}: what was done is done`);
      for (const step of told)
        assert.ok(known.has(step) || heirOf(step, known), `${job.name}: ${step} was done`);
      assert.equal(
        Boolean(state.finished),
        events.some(({ kind }) => kind === 'finish'),
      );
      await goTo(page, `#/record/${job.id}`);
      const text = await seen(page);
      for (const { kind, what, value, text: note } of events) {
        if (kind === 'note') assert.ok(text.includes(note), `${note}: ${text}`);
        if (what === 'odometer') assert.ok(text.includes(value.replace(/ (?=\d)/, '')), text);
      }
    }

    // The job that was half done goes on where it was, to its next step.
    await goTo(page, `#/job/${half.id}`);
    const before = await stored(page, 'events');
    await untilStep(page, doneOf(before.filter(({ job }) => job === half.id)).size + 1);
    await tapDone(page);
    await untilStep(page, doneOf(before.filter(({ job }) => job === half.id)).size + 2);
    const after = await stored(page, 'events');
    const fresh = after.filter(({ id }) => !before.some((event) => event.id === id));
    const count = before.filter(({ job }) => job === half.id).length;
    // What was typed at the step and not entered is noted with it.
    const noted = kept('drafts').map(({ value }) => [half.id, 'note', value]);
    const told = [...noted, [half.id, 'done', undefined]];
    assert.deepEqual(
      fresh.sort((a, b) => a.seq - b.seq).map(({ job, kind, text, seq }) => [job, kind, text, seq]),
      told.map((each, n) => [...each, count + 1 + n]),
    );
    await page.reload();
    await untilStep(page, doneOf(after.filter(({ job }) => job === half.id)).size + 1);
    // The page from which the store was made has no icon.
    assert.deepEqual(
      complaints.filter((complaint) => !complaint.includes('favicon')),
      [],
    );
  });
