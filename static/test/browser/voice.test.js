// A step read aloud, a job steered by voice, the screen kept on; and a phone that
// has none of it.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { goTo, openStep, phone, startJob, stored, tapDone, untilStep } from './job-page.js';
import { openSite } from './open-site.js';
import { polling } from './page.js';
import { seen, tap, tapText, untilSeen } from './person.js';
import { voices } from './voices.js';
import { sampleCard, words } from './words.js';

const { make, model } = sampleCard('tessaly-corda-570');
const bike = `${make} ${model}`;
const ready = (page) => page.evaluateOnNewDocument(voices);

test('a step is read aloud, and no longer when it is left or tapped again', async (t) => {
  const { page, complaints } = await openSite(t, ready);
  await startJob(page, bike);
  await openStep(page, 'tighten-drain');
  await tap(page, words('hands.read'));
  await untilSeen(page, words('hands.reading'));
  const said = (await phone(page, 'said')).join(' ');
  for (const part of [
    'newton metres',
    words('signal.NOTICE'),
    words('hands.ask', { what: '@ask.torque' }),
  ])
    assert.ok(said.includes(part), `${part} in ${said}`);
  await tap(page, words('hands.reading'));
  await untilSeen(page, words('hands.read'));
  assert.deepEqual(await phone(page, 'spoken'), []);
  await tap(page, words('hands.read'));
  await untilSeen(page, words('hands.reading'));
  await tapDone(page);
  await untilSeen(page, words('hands.read'));
  assert.deepEqual(await phone(page, 'spoken'), [], 'the next step is still');
  assert.deepEqual(complaints, []);
});

test('a few words steer the job; what the phone says itself does not', async (t) => {
  const { page, complaints } = await openSite(t, ready);
  const hear = (text) => page.evaluate((said) => globalThis.phone.hear(said), text);
  const finish = () => page.evaluate(() => globalThis.phone.finish());
  await startJob(page, bike);
  assert.equal(
    await page.evaluate(() => globalThis.phone.ears.size),
    0,
    'off until it is asked for',
  );
  await tapText(page, words('hands.listen'));
  await page.waitForFunction(() => globalThis.phone.ears.size === 1, { polling });
  await hear('next please');
  await untilStep(page, 2);
  await untilSeen(page, words('hands.heard', { word: 'next' }));
  assert.deepEqual(await phone(page, 'said'), ['next']);
  await hear('next'); // the phone is still saying "next" back
  await finish();
  await hear('back');
  await untilStep(page, 1);
  assert.equal((await stored(page, 'events')).length, 1, 'the echo did nothing');
  await finish();
  await hear('undo');
  await untilSeen(page, words('job.undone'));
  await finish();
  await hear('read');
  await untilSeen(page, words('hands.reading'));
  await tapText(page, words('hands.listen'));
  assert.equal(await page.evaluate(() => globalThis.phone.ears.size), 0);
  assert.deepEqual(complaints, []);
});

test('a phone without any of this has the same job, and no button that does nothing', async (t) => {
  const { page } = await openSite(t, (p) =>
    p.evaluateOnNewDocument(() => {
      delete globalThis.speechSynthesis;
      delete globalThis.SpeechRecognition;
      delete globalThis.webkitSpeechRecognition;
      delete globalThis.AudioContext;
      delete Navigator.prototype.vibrate;
      delete Navigator.prototype.wakeLock;
      delete HTMLCanvasElement.prototype.captureStream;
    }),
  );
  await startJob(page, bike);
  await openStep(page, 'run-out');
  await tap(page, words('timer.start', { length: '5\u00a0min' }));
  await untilSeen(page, words('timer.stop'));
  const all = await seen(page);
  assert.ok(all.includes(words('timer.no-sound')), all);
  assert.ok(all.includes(words('job.asleep')), all);
  for (const id of ['hands.read', 'hands.listen']) assert.ok(!all.includes(words(id)), id);
});

test('without a wake lock a film of one point keeps the screen on until the job is left', async (t) => {
  const { page, complaints } = await openSite(t, (p) =>
    p.evaluateOnNewDocument(() => delete Navigator.prototype.wakeLock),
  );
  await startJob(page, bike);
  await untilSeen(page, words('hands.film'));
  const playing = () => [...document.querySelectorAll('video')].map((v) => !v.paused && v.muted);
  assert.deepEqual(await page.evaluate(playing), [true]);
  await goTo(page, '#/bikes');
  assert.deepEqual(await page.evaluate(playing), []);
  assert.deepEqual(complaints, []);
});
