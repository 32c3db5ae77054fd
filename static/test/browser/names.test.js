// Names that mean something to every object of the language, "constructor" and
// "toString", in addresses and in records: each draws a proper screen.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo, plant, plantSetting } from './job-page.js';
import { openSite } from './open-site.js';
import { untilState } from './page.js';
import { patience } from './patience.js';
import { sampleJobs } from './sample-jobs.js';
import { sampleCard, words } from './words.js';

const names = Object.getOwnPropertyNames(Object.prototype);
const card = sampleCard('tessaly-corda-570');

// An address of each screen with all the parts it may have.
const addresses = [
  ['bikes', 'x'],
  ['bike', card.id],
  ['bench-sheet', card.id, '{}'],
  ['bench', 'level', '{}'],
  ['bill', 'open-job'],
  ['cards', 'show', card.id],
  ['due', 'x'],
  ['edit', 'x'],
  ['job', 'open-job', 'step', 'identify'],
  ['keep', 'x'],
  ['record', 'open-job'],
  ['settings', 'x'],
  ['sheet', 'open-job'],
  ['trouble', 'fell-in', '{}'],
];

/** All that may stand at a place: the name, and where JSON stands it as each of its members. */
const instead = (part, name) =>
  part === '{}'
    ? [
        name,
        JSON.stringify(name),
        `{"${name}":"${name}"}`,
        `{"answers":{"${name}":"${name}"},"hand":["${name}"],"job":"${name}","step":"${name}"}`,
        `{"answers":"${name}","hand":"${name}"}`,
      ]
    : [name];

const hostile = addresses.flatMap((parts) =>
  parts.flatMap((part, place) =>
    names
      .flatMap((name) => instead(part, name))
      .map((other) => `#/${parts.with(place, other).map(encodeURIComponent).join('/')}`),
  ),
);

/** Goes to each address from another screen; resolves to {address: what is wrong there}. */
const visit = (page, list) =>
  page.evaluate(
    async (all, failed, wait) => {
      const until = async (holds) => {
        for (const end = performance.now() + wait; !holds();)
          if (performance.now() > end) return false;
          else await new Promise((resolve) => setTimeout(resolve, 4));
        return true;
      };
      const arrived = () => document.activeElement?.tagName === 'H1';
      const go = (hash) => {
        document.activeElement?.blur();
        location.hash = hash;
        return until(arrived);
      };
      const wrong = {};
      for (const address of all) {
        await go('#/settings/from');
        const here = await go(address);
        const text = document.querySelector('main')?.innerText ?? '';
        if (!here || !document.querySelector('h1')?.innerText.trim()) wrong[address] = 'no heading';
        else if (text.includes(failed)) wrong[address] = failed;
        else if (/native code|\[object|undefined/.test(text)) wrong[address] = text;
      }
      return wrong;
    },
    list,
    words('page.failed'),
    patience(5),
  );

test('a name of every object in any part of an address draws a screen', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  await plant(page, ...sampleJobs([])[0]);
  for (let from = 0; from < hostile.length; from += 50)
    assert.deepEqual(await visit(page, hostile.slice(from, from + 50)), {});
  assert.deepEqual(complaints, []);
});

/** Events in which every word is that name. */
const eventsOf = (name) =>
  ['done', 'note', 'photo', 'reading', 'look', 'problem', 'timer', 'bill', name].map((kind, n) => ({
    id: n ? `${name}-${n}` : name,
    time: '2026-11-24T09:00:05.000Z',
    kind,
    step: name,
    what: name,
    of: name,
    value: name,
    text: `{"lines":[{"of":"${name}","kind":"${name}","text":"x"}],"${name}":"${name}"}`,
    until: '2026-11-24T09:00:06.000Z',
    signs: JSON.parse(`{"${name}":"${name}"}`),
  }));

test('a record in which every word is a name of every object can be read', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  const [[job]] = sampleJobs([]);
  const wrong = {};
  for (const name of names) {
    const summary = { phase: name, verdict: name, oils: [{ role: name }], done: 1, steps: 2 };
    await plant(page, { ...job, id: name, name, summary }, eventsOf(name));
    const screens = ['job', 'record', 'sheet', 'bill'].map((s) => `#/${s}/${name}`);
    Object.assign(wrong, await visit(page, [...screens, `#/job/${name}/step/${name}`]));
  }
  Object.assign(wrong, await visit(page, ['#/record', '#/bikes', '#/due', '#/keep', '#/cards']));
  assert.deepEqual(wrong, {});
  assert.deepEqual(complaints, []);
});

test('settings with such names in them leave every screen as it is', async (t) => {
  const { page, complaints } = await openSite(t);
  await untilState(page, 'ready');
  const value = JSON.parse(`{${names.map((name) => `"${name}":"${name}"`).join()}}`);
  for (const key of ['bill', 'calculation/level', ...names]) await plantSetting(page, key, value);
  await page.reload();
  await goTo(page, '#/settings');
  assert.deepEqual(await visit(page, ['#/bench/level', '#/bikes', '#/keep', '#/bench']), {});
  assert.deepEqual(complaints, []);
});
