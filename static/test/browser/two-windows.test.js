// Two windows on one job write at the same time, and one of them dies on the way: all
// that each said it has kept is there, and a step that both said is done is done once.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { setTimeout as pause } from 'node:timers/promises';
import { kinds } from '../soak/kinds.js';
import { startJob, stored, untilReady } from './job-page.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import { patience } from './patience.js';
import { tap } from './person.js';
import { sampleCard, words } from './words.js';

const card = sampleCard('tessaly-corda-570');
const many = 40; // notes of each window

/** Runs in the page: writes a note at the step on the screen, and ends when it is shown to be kept. */
async function writeNote(text) {
  const plain = () => document.body.innerText.replace(/\s+/g, ' ').replace(/[\u2066-\u2069]/g, '');
  const field = document.querySelector('details.note textarea');
  field.value = text;
  field.dispatchEvent(new Event('input', { bubbles: true }));
  field.form.requestSubmit();
  while (!plain().includes(`✎ ${text}`)) await new Promise((next) => setTimeout(next, 5));
}

/** Writes notes one after the other; `kept` gets each that is kept. */
async function writeNotes(page, texts, kept) {
  for (const text of texts) {
    await page.evaluate(writeNote, text);
    kept.push(text);
  }
}

/** A phone with a job, and two windows that show a step of it. */
async function twoWindows(t) {
  const { page, browser, url } = await openSite(t);
  await untilState(page, 'ready');
  await startJob(page, `${card.make} ${card.model}`);
  const [{ id }] = await stored(page, 'jobs');
  const address = `${url}#/job/${id}/step/identify`;
  await page.close();
  const open = async () => {
    const window = await browser.newPage();
    await window.goto(address);
    await window.waitForSelector('details.note textarea');
    return window;
  };
  return { open, one: await open(), two: await open() };
}

const notesOf = (name) => Array.from({ length: many }, (_, n) => `Note ${n + 1} of ${name}.`);

test('two windows write notes at once, one dies and comes back: all that was kept is there once', async (t) => {
  const { open, one, two } = await twoWindows(t);
  const [keptByOne, keptByTwo] = [[], []];
  const whole = writeNotes(one, notesOf('one'), keptByOne);
  const broken = writeNotes(two, notesOf('two'), keptByTwo).catch(() => {}); // it dies on the way
  while (keptByTwo.length < many / 2) await pause(1);
  await kinds.renderer.kill({ page: two });
  await broken;
  assert.ok(keptByTwo.length < many, 'it died before the end');
  const again = await open();
  // The one that was being written may be there or not: it is not written again.
  const rest = notesOf('two').slice(keptByTwo.length + 1);
  await Promise.all([whole, writeNotes(again, rest, keptByTwo)]);

  const there = (await stored(again, 'events')).map(({ text }) => text);
  const kept = [...keptByOne, ...keptByTwo];
  assert.equal(kept.length, 2 * many - 1);
  assert.deepEqual(
    kept.filter((text) => !there.includes(text)),
    [],
    'none is lost',
  );
  assert.equal(new Set(there).size, there.length, `none is there twice: ${there}`);
});

/** Runs in the page: says that the step on the screen is done; gives its id. */
function sayDone() {
  const step = document.querySelector('details.note textarea').id.replace('note-', '');
  document.querySelector('.actions .main').click();
  return step;
}

/** What the core makes of the job. */
const replayed = (page, record, events) =>
  page.evaluate((input) => globalThis.tidysump.core.call('replay', input), { ...record, events });

test('a step that two windows say is done at once is done once, and one tap takes it back', async (t) => {
  const { one, two } = await twoWindows(t);
  const left = (id) => !document.getElementById(`note-${id}`);
  const [{ card: own, bench, started }] = await stored(one, 'jobs');
  const state = async () =>
    (await replayed(one, { card: own, bench, started }, await stored(one, 'events'))).ok;
  const { gates = [], toDo } = await state();
  const plain = toDo.slice(
    0,
    toDo.findIndex((step) => gates.includes(step)),
  );
  assert.ok(plain.length > 2, 'some steps come before one that asks whether it was looked at');
  const steps = [];
  for (const due of plain.slice(0, many / 4)) {
    await Promise.all([one, two].map(untilReady));
    const said = await Promise.all([one, two].map((page) => page.evaluate(sayDone)));
    assert.deepEqual(said, [due, due], 'both show the same step');
    steps.push(due);
    for (const page of [one, two])
      await page.waitForFunction(left, { polling, timeout: patience() }, due);
  }
  assert.deepEqual((await state()).done, steps);
  await one.bringToFront();
  await tap(one, words('job.undo'));
  await one.waitForSelector(`#note-${steps.at(-1)}`);
  assert.deepEqual((await state()).done, steps.slice(0, -1));
});
