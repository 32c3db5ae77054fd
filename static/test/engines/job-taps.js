// What a person taps in the job of the walk.
import { held } from '../browser/held.js';
import { planOf, stored } from '../browser/job-page.js';
import { sampleCard, words } from '../browser/words.js';

/** The bike of the walk. */
export const card = sampleCard('tessaly-corda-570');

/** The steps of its plan. */
export const stepsOf = async ({ page }) => (await planOf(page, card)).steps;

/** Opens a step of the job. */
export async function openStep(phone, id) {
  await phone.goTo(`#/job/${phone.left.job}/step/${id}`);
  await phone.engine.until((step) => document.getElementById(`note-${step}`) !== null, id);
}

/** All events that the store holds. */
export const everyEvent = async ({ page }) => (await held(page)).events;

/** The ids of the steps that are done, as the core replays the record. */
export async function doneSteps(phone) {
  const { page, left } = phone;
  const job = (await stored(page, 'jobs')).find(({ id }) => id === left.job);
  const events = (await everyEvent(phone)).filter((event) => event.job === left.job);
  const replay = (input) => globalThis.tidysump.core.call('replay', input);
  const { bench, started } = job;
  const { ok, findings } = await page.evaluate(replay, { card: job.card, bench, started, events });
  if (!ok) throw new Error(JSON.stringify(findings));
  return ok.done ?? [];
}

/** Opens the first step that is not done; resolves to its id. */
export async function openFirstStep(phone) {
  const done = await doneSteps(phone);
  const { id } = (await stepsOf(phone)).find((step) => !done.includes(step.id));
  await openStep(phone, id);
  return id;
}

/** Writes a note at the step on the screen, and waits until it is kept. */
export async function noteDown({ engine }, text) {
  await engine.until(() => document.querySelector('details.note') !== null);
  if (!(await engine.evaluate(() => document.querySelector('details.note').open)))
    await engine.tap('details.note summary');
  await engine.type(words('job.note'), text);
  await engine.tap({ role: 'button', name: words('job.note.save') });
  await engine.untilSeen(`✎ ${text}`);
}

/** The events of the job that are of that kind. */
export const eventsOf = async (phone, kind) =>
  (await everyEvent(phone)).filter((event) => event.job === phone.left.job && event.kind === kind);

/** Runs in the page: what came of Done at a step, 'gate' or 'left'; '' while nothing did. */
const cameOf = (step) => {
  if (document.querySelector('.actions.brake')) return 'gate';
  const here = document.querySelector('.step');
  return here && here.dataset.step === step ? '' : 'left';
};

/** Taps Done at the step on the screen once it has stood there; goes on from a gate all the same. */
export async function tapDone(phone) {
  const { engine } = phone;
  const ready = () =>
    engine.until(() => {
      const step = document.querySelector('.step[data-ready]');
      return step && step.dataset.step;
    });
  const step = await ready();
  await phone.tap(words('job.done'), 'button');
  if ((await engine.until(cameOf, step)) === 'left') return;
  await ready();
  await phone.tap(words('job.brake.on'), 'button');
}
