// What a person does with the app, which may die at any moment of it. The ledger is
// told what may be written from now on, and then what the page says it has kept.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { goTo, tapDone, untilStep } from '../browser/job-page.js';
import { temporaryFolder } from '../browser/launch.js';
import { polling, stateOf } from '../browser/page.js';
import { patience } from '../browser/patience.js';
import { enter, tap, type, untilSeen } from '../browser/person.js';
import { keepPicture } from '../browser/photos-page.js';
import { words } from '../browser/words.js';
import { backupOf } from './restored-jobs.js';

const bike = 'tessaly-corda-570';
const odometerStep = 'identify';

/** ms within which what is typed is written down. */
export const draftDue = patience(1);

/** Runs in the page: id of the step on the screen, '' where there is none. */
const stepShown = () =>
  document.querySelector('.screen-job textarea[id^="note-"]')?.id.replace(/^note-/, '') ?? '';

/** A person with a phone, at work on one job after the other. */
export class Person {
  /** @type {string | null} id of the job at work */
  job = null;
  /** Which is over when the app was killed. */
  life = { over: false };
  /** @type {{ path: string, ids: string[] } | null} the file whose restore broke off */
  file = null;
  #counted = 0;

  /** `many` says how many jobs a file to restore has. */
  constructor(t, phone, ledger, chance, many) {
    Object.assign(this, { t, phone, ledger, chance, many });
  }

  /** A number that this person has not used before. */
  count() {
    return ++this.#counted;
  }

  /** Notes an entry, has it written and waits until it is said to be kept. */
  async keep(entries, write) {
    for (const entry of entries) this.ledger.begin(entry);
    await write();
    for (const entry of entries) this.ledger.kept(entry);
  }

  /** Goes to a step of the job, or to the one that comes next; resolves to its id. */
  async toStep(id) {
    const { page } = this.phone;
    if (!this.job) await acts.begin(this);
    const here = await page.evaluate(() => location.hash);
    const shown = await page.evaluate(stepShown);
    const open = await page.evaluate(
      (word) => document.querySelector('.actions .main')?.textContent.trim() === word,
      words('job.done'),
    );
    if (here.startsWith(`#/job/${this.job}`) && shown && (id ? id === shown : open)) return shown;
    await goTo(page, `#/job/${this.job}${id ? `/step/${id}` : ''}`);
    return page.evaluate(stepShown);
  }
}

/** Types into the note of the step on the screen. */
async function typeNote(page, text) {
  await page.$eval('details.note', (details) => (details.open = true));
  await type(page, words('job.note'), text);
}

/** Keeps what stands in the note of the step on the screen. */
export const saveNote = (person, text) =>
  person.keep([`note ${person.job} ${text}`], async () => {
    await tap(person.phone.page, words('job.note.save'));
    await untilSeen(person.phone.page, `✎ ${text}`);
  });

/** Name -> what is done: act(person). */
export const acts = {
  async begin(person) {
    const { page } = person.phone;
    await goTo(page, `#/bike/${bike}`);
    await person.keep(['job'], async () => {
      await tap(page, words('plan.start'));
      await untilStep(page, 1);
    });
    [, person.job] = (await page.evaluate(() => location.hash)).match(/^#\/job\/([^/]+)/);
  },

  async done(person) {
    const { page } = person.phone;
    const step = await person.toStep();
    if (!step) return acts.finish(person);
    await person.keep([`done ${person.job} ${step}`], async () => {
      await tapDone(page);
      const left = (id) => !document.getElementById(id);
      await page.waitForFunction(left, { polling, timeout: patience() }, `note-${step}`);
    });
  },

  async finish(person) {
    const { page } = person.phone;
    await person.keep([`finish ${person.job} `], async () => {
      await tap(page, words('job.finish'));
      await page.waitForSelector('.screen-record', { timeout: patience() });
    });
    person.job = null;
  },

  async undo(person) {
    const { page } = person.phone;
    await person.toStep();
    await goTo(page, `#/job/${person.job}`); // nothing that was said before stands there
    if (!(await page.$('.actions button:last-child:enabled'))) return;
    await person.keep([`undo ${person.job} `], async () => {
      await tap(page, words('job.undo'));
      await untilSeen(page, words('job.undone'));
    });
  },

  async reading(person) {
    await person.toStep(odometerStep);
    const value = `${10_000 + person.count()} km`;
    await person.keep([`reading ${person.job} ${value}`], async () => {
      await enter(person.phone.page, words('ask.odometer'), value);
      await untilSeen(person.phone.page, words('job.kept', { value }));
    });
  },

  async note(person) {
    await person.toStep();
    const text = `Note number ${person.count()}.`;
    if (!(await person.phone.page.evaluate(stepShown))) return acts.finish(person);
    await typeNote(person.phone.page, text);
    await saveNote(person, text);
  },

  /** Something is typed, and some time later kept. */
  async draft(person) {
    const step = await person.toStep();
    if (!step) return acts.finish(person);
    const text = `Note number ${person.count()}, typed slowly.`;
    await typeNote(person.phone.page, text);
    person.ledger.draft = { step, text, since: Date.now() };
    const { life } = person;
    await pause(draftDue + person.chance.below(2000)); // as long as a person may look at it
    if (life.over) throw new Error('the phone is dead');
    await saveNote(person, text);
    person.ledger.draft = null;
  },

  async photo(person) {
    const { page } = person.phone;
    if (!(await person.toStep())) return acts.finish(person);
    const picture = await pictureOf(page, person.chance.pick([40, 3000]));
    await person.keep([`photo ${person.job} `, `picture ${person.job}`], () =>
      keepPicture(person.t, page, picture),
    );
  },

  /** A file is restored; one whose restore broke off is restored once more. */
  async restore(person) {
    const { page } = person.phone;
    const { path, ids } = (person.file ??= await newFile(person));
    await goTo(page, '#/keep');
    const input = await page.waitForSelector('#backup-file');
    await input.uploadFile(path);
    // What came in before it broke off is there already, and comes in once.
    const missing = ids.map((id) => `restored ${id}`).filter((entry) => !person.ledger.has(entry));
    await person.keep(missing, async () => {
      await tap(page, words('restore.do'));
      await untilSeen(page, words('restore.done'));
    });
    person.file = null;
  },

  /**
   * The host has another edition, which is taken as soon as it is offered. After an update
   * that broke off, one that came to nothing may be offered and taken before it.
   */
  async update(person) {
    const { page, host } = person.phone;
    await goTo(page, '#/bikes');
    const { version } = await stateOf(page);
    await host.deployTo(page);
    const loaded = () => !globalThis.left && globalThis.tidysump && document.querySelector('h1');
    do {
      await untilWaiting(page);
      await page.evaluate(() => (globalThis.left = true));
      await tap(page, words('update.take'));
      await page.waitForFunction(loaded, { polling, timeout: patience() });
    } while ((await stateOf(page)).version === version);
  },
};

/** Waits until an update is offered; an install that broke off is tried again. */
async function untilWaiting(page) {
  const looked = async () => {
    const { offline } = globalThis.tidysump;
    await offline.check();
    return offline.state.waiting;
  };
  await page.waitForFunction(looked, { polling: 200, timeout: patience() });
}

/** A JPEG as wide as that, with something in it. */
async function pictureOf(page, width) {
  const base64 = await page.evaluate((wide) => {
    const canvas = Object.assign(document.createElement('canvas'), { width: wide, height: wide });
    const brush = canvas.getContext('2d');
    brush.fillStyle = 'teal';
    brush.fillRect(0, 0, wide, wide / 2);
    return canvas.toDataURL('image/jpeg', 0.9).split(',')[1];
  }, width);
  return Buffer.from(base64, 'base64');
}

async function newFile(person) {
  const name = `restored-${person.count()}`;
  const ids = Array.from({ length: person.many }, (_, n) => `${name}-${n}`);
  const path = join(await temporaryFolder(person.t), `${name}.txt`);
  await writeFile(path, await backupOf(ids));
  return { path, ids };
}
