// What a person does in a job, with what must hold each time.
import assert from 'node:assert/strict';
import { done, stored, untilStep } from './job-page.js';
import { enter, field, tap, tapText, type, typed, untilSeen } from './person.js';
import { words } from './words.js';

export async function doneTo(page, from, to) {
  for (let step = from; step < to; step++) await done(page, step);
}

/** Enters what can't be: one sentence says so, and nothing typed is lost. */
export async function badReading(page, label, text, sentence) {
  const before = (await stored(page, 'events')).length;
  await enter(page, label, text);
  await untilSeen(page, sentence);
  assert.equal(await typed(page, label), text);
  assert.equal((await stored(page, 'events')).length, before, 'nothing was stored');
}

/** The sentence stands in the same part of the screen as the field, not somewhere below. */
export async function besideField(page, label, sentence) {
  const input = await field(page, label);
  const part = await input.evaluate((element) =>
    element.closest('section').innerText.replace(/\s+/g, ' '),
  );
  assert.ok(part.includes(sentence), part);
}

export async function note(page, text) {
  await tapText(page, words('job.note'));
  await type(page, words('job.note'), text);
  await tap(page, words('job.note.save'));
  await untilSeen(page, `✎ ${text}`);
}

export async function undo(page, number) {
  await tap(page, words('job.undo'));
  await untilStep(page, number);
  await untilSeen(page, words('job.undone'));
}
