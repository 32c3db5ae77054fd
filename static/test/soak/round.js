// One round: a person works, something is killed at a moment that chance decides, the
// app is opened again, and all that was made is looked for.
import { setTimeout as pause } from 'node:timers/promises';
import { goTo } from '../browser/job-page.js';
import { askCore, polling } from '../browser/page.js';
import { patience } from '../browser/patience.js';
import { seen } from '../browser/person.js';
import { acts, draftDue, saveNote } from './acts.js';
import { entriesIn, notesOf } from './in-store.js';
import { kinds } from './kinds.js';
import { eventsEach } from './restored-jobs.js';

/** Acts by how often a person does them. */
const often = Object.entries({
  done: 6,
  note: 4,
  reading: 2,
  draft: 4,
  photo: 3,
  undo: 1,
  begin: 1,
  restore: 2,
  update: 2,
}).flatMap(([name, times]) => Array(times).fill(name));

/** ms that each act took last: moments are chosen within it. */
const usual = {};

/**
 * Runs a round: what is killed is a name in `kinds`, `first` is what the person begins
 * with. Resolves to what came of it: lists of entries {lost, doubled, draftsLost}, and
 * `resume`, the milliseconds until the app was back and answered.
 */
export async function round(person, name, first = person.chance.pick(often)) {
  const { phone, ledger, chance } = person;
  const kind = kinds[name];
  let dying = false;
  const working = work(person, first, () => dying);
  const moment = chance.below(1.2 * (usual[first] ?? 2000));
  await Promise.race([first === 'draft' ? stands(ledger) : pause(moment), working]);
  dying = true;
  const address = new URL(phone.page.url()).hash;
  const { draft } = ledger;
  const killed = Date.now();
  await kind.kill(phone);
  // An update that is taken meanwhile loads the page again.
  const answered = kind.goesOn && untilAnswered(phone.page).catch(() => killed);
  if (kind.goesOn) await working;
  else [person.life.over, person.life] = [true, { over: false }];
  working.catch(() => {}); // it was interrupted
  const began = Date.now();
  await kind.again(phone, address);
  const back = await untilAnswered(phone.page);
  const resume = Math.max(back - began, kind.goesOn ? (await answered) - killed : 0);

  const draftsLost = kind.goesOn ? [] : await lostDraft(person, draft, killed);
  const { lost, doubled } = ledger.compare(await entriesIn(phone.page, eventsEach));
  lost.push(...(await notShown(person)));
  return { lost: [...lost, ...(await mixed(phone.page))], doubled, draftsLost, resume };
}

/** Waits until what was typed stands there for so long that it should be written down. */
async function stands(ledger) {
  const began = Date.now();
  while (!ledger.draft || Date.now() - ledger.draft.since <= draftDue) {
    if (Date.now() - began > patience()) throw new Error('nothing was typed');
    await pause(polling);
  }
}

/** Does one thing after the other, until it is the last. */
async function work(person, first, last) {
  let name = first;
  do {
    const began = Date.now();
    await acts[name](person);
    usual[name] = Date.now() - began;
    name = person.chance.pick(often);
  } while (!last());
}

/** Waits until the page's core answers; resolves to the time. */
async function untilAnswered(page) {
  const code = await askCore(page);
  if (code !== 'unknown-op') throw new Error(`the core says ${code}`);
  return Date.now();
}

/**
 * What stood in a field when the app was killed, where it should have come back and
 * did not: a list with no entry or one. What came back is kept.
 */
async function lostDraft(person, draft, killed) {
  const { page } = person.phone;
  person.ledger.draft = null;
  if (!draft) return [];
  const back = (id, text) =>
    document.body.innerText.includes(`✎ ${text}`)
      ? 'kept'
      : document.getElementById(id)?.value === text && 'draft';
  const found = await page
    .waitForFunction(back, { polling, timeout: patience(3) }, `note-${draft.step}`, draft.text)
    .then(
      (handle) => handle.jsonValue(),
      () => undefined,
    );
  if (found === 'draft') {
    await page.$eval('details.note', (details) => (details.open = true));
    await saveNote(person, draft.text);
  }
  return found || killed - draft.since <= draftDue ? [] : [`draft ${person.job} ${draft.text}`];
}

/** Notes of the job at work that its record does not show. */
async function notShown({ phone: { page }, job }) {
  if (!job) return [];
  const notes = await notesOf(page, job);
  await goTo(page, `#/record/${job}`);
  const record = await seen(page);
  return notes.filter((text) => !record.includes(text)).map((text) => `shown note ${job} ${text}`);
}

/** Says so where page and core are of two editions. */
async function mixed(page) {
  const edition = () => globalThis.edition ?? 'now';
  const workers = await Promise.all(page.workers().map((worker) => worker.evaluate(edition)));
  const parts = new Set([await page.evaluate(edition), ...workers]);
  return parts.size > 1 ? [`one edition: ${[...parts]}`] : [];
}
