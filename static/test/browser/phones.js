// The phones on which the screens are looked at: what each can't do, and what lies
// in its store.
import { setTimeout as pause } from 'node:timers/promises';
import { keep, ownCard, packOf, paste, tick } from './cards-page.js';
import { chooseText } from './choose-file.js';
import { changeOfOil, dueJobs } from './due-jobs.js';
import { hostileJob } from './hostile-texts.js';
import { goTo, plant, plantIn, planOf, plantSetting, stored } from './job-page.js';
import { lookedThen, lookNow } from './look-jobs.js';
import { besideJob, brokenJob, oddJob } from './odd-jobs.js';
import { polling } from './page.js';
import { tap, untilSeen } from './person.js';
import { sampleJobs } from './sample-jobs.js';
import { voices } from './voices.js';
import { changelog, sampleBackup, sampleCard, words } from './words.js';

/** Runs in the page, before it: a browser that has no store. */
export const withoutStore = () => void delete globalThis.indexedDB;

/** Runs in the page, before it: a store that takes no further entry. */
function fullStore() {
  IDBObjectStore.prototype.add = () => {
    throw new DOMException('planted', 'QuotaExceededError');
  };
}

/** Runs in the page, before it: a phone on which the core can't be started. */
function withoutCore() {
  globalThis.Worker = class {
    constructor() {
      throw new Error('planted');
    }
  };
}

/** Runs in the page, before it: the core has died, and the next one is long in coming. */
function slowCore() {
  let started = 0;
  globalThis.Worker = class extends EventTarget {
    constructor() {
      super();
      if (!started++) throw new Error('planted');
    }
    terminate() {}
  };
}

/** Runs in the page, before it: a version that waits to take over. */
function updateWaits() {
  const worker = {
    state: 'activated',
    addEventListener() {},
    postMessage(_, ports) {
      const { content } = document.querySelector('meta[name="version"]');
      ports?.[0].postMessage({ newest: content, served: content, have: 1, want: 1 });
    },
  };
  const registration = {
    active: worker,
    waiting: worker,
    addEventListener() {},
    async update() {},
  };
  ServiceWorkerContainer.prototype.register = async () => registration;
}

/** Runs in the page, before it: the signs by which the browser of an iPhone is known. */
export function applePhone() {
  const agent =
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_6 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/26.0 Mobile/15E148 Safari/604.1';
  const says = { userAgent: agent, userAgentData: undefined, maxTouchPoints: 5 };
  for (const [name, value] of Object.entries(says))
    Object.defineProperty(navigator, name, { value });
  globalThis.GestureEvent = class {};
}

/** What the backup of the tests holds. */
async function restored(page) {
  await goTo(page, '#/keep');
  await chooseText(page, '#backup-file', 'backup.txt', sampleBackup);
  await tap(page, words('restore.do'));
  await untilSeen(page, words('restore.done-aside'));
}

/** What a person saw last is older than what there is. */
async function justUpdated(page) {
  const [newest, older] = changelog.map(({ version }) => version);
  // A first visit has nothing to catch up with, which the page notes first.
  while (!(await stored(page, 'settings')).includes(newest)) await pause(polling);
  await plantSetting(page, 'seenChange', older);
}

async function plantAll(page, jobs) {
  for (const [job, events] of jobs) await plant(page, job, events);
}

/** The jobs that most screens are looked at with. */
async function inUse(page) {
  const { steps } = await planOf(page, sampleCard('tessaly-corda-570'));
  await plantAll(page, [...sampleJobs(steps), ...dueJobs('ondrake-quarto-830')]);
}

/** Jobs with something typed and not entered, with contents from elsewhere, and with what can't be read. */
async function halfWritten(page) {
  await plantAll(page, [brokenJob, oddJob, ...sampleJobs([])]);
  await plantIn(page, 'beside', ...besideJob('odd'));
  const time = '2026-11-24T12:00:00.000Z';
  const draft = (field, value) => ({ key: `job/open-job/ ${field}`, value, time });
  await plantIn(
    page,
    'drafts',
    draft('note-lay-out', 'half a sen'),
    draft('ask-measure-engine-drained-engine', '2,4'),
    draft('problem-fell-in', { answers: {}, hand: [], step: 'lay-out' }),
  );
}

/** Forty own cards, one in two versions, one pinned, and as many jobs. */
async function crowded(page) {
  const herd = Array.from({ length: 39 }, (_, n) => ownCard(`herd-${n}`, `Herd ${100 + n}`));
  const heron = ownCard('heron', 'Heron 500');
  const thicker = ownCard(
    'heron',
    'Heron 500',
    (card) => (card.circuits[0].withFilter.value = 3.9),
  );
  await paste(page, packOf(...herd, heron));
  await keep(page, 40);
  await goTo(page, '#/bikes');
  await tap(page, words('bikes.pin', { name: 'Plainford Herd 103' }));
  await untilSeen(page, words('bikes.pinned'));
  await paste(page, packOf(thicker));
  await untilSeen(page, words('pack.changed.why'));
  await tick(page, 'Heron');
  await keep(page, 1);
  for (let n = 0; n < 40; n++) {
    const [job, events] = changeOfOil(20 + n, `${60 - n} 000 km`, { bike: 'ondrake-quarto-830' });
    job.summary = {
      ...job.summary,
      waiting: n % 5 === 1,
      odometer: `${60 - n}000 km`,
      oils: [{ role: 'role.engine', poured: '2.5 L', grade: '10W-40' }],
      notes: n % 3,
      photos: n % 4,
      verdict: n % 7 === 3 ? 'debris.watch' : undefined,
    };
    if (n % 10 === 4) delete job.summary.finished;
    await plant(page, job, events);
  }
}

/** Two bikes of one model and one that was sold, with jobs, of somebody who works for others. */
async function severalBikes(page) {
  await inUse(page);
  const card = 'tessaly-corda-570';
  const row = { id: 'bertha', card, called: 'Bertha', plate: 'AB 12', words: 'red tank' };
  const figures = [
    { what: 'volume.engine', value: '2.2 L', standing: 'measured', why: 'bike level' },
  ];
  await plantIn(
    page,
    'facts',
    ...factsOf('bertha', [
      { kind: 'follows', value: card },
      ...['called', 'plate', 'words'].map((what) => ({ kind: 'told', what, value: row[what] })),
      { kind: 'told', what: 'owner', value: 'Ada Birch' },
      ...figures.map(({ what, value, standing, why }) => ({
        kind: 'figure',
        what,
        value,
        text: why,
        signs: { standing, system: 'metric' },
      })),
    ]),
    ...factsOf('sold', [
      { kind: 'follows', value: card },
      { kind: 'told', what: 'plate', value: 'EF 34' },
      { kind: 'aside', what: 'sold' },
    ]),
    ...factsOf('twice', [
      { kind: 'follows', value: card },
      { kind: 'told', what: 'called', value: 'Bertie' },
      { kind: 'joined', value: 'bertha' },
    ]),
  );
  await plantIn(
    page,
    'bikes',
    { ...row, owner: 'Ada Birch', figures, changed: factTime },
    { id: 'sold', card, plate: 'EF 34', aside: 'sold', changed: factTime },
    { id: 'twice', card, called: 'Bertie', into: 'bertha', changed: factTime },
  );
  const [job, events] = changeOfOil(30, '12 000 km');
  await plant(page, { ...job, bike: 'bertha' }, events);
  await plantSetting(page, 'forOthers', true);
}

/** Visits of customers: one that was signed for, with trouble to be decided, and one handed over. */
async function forOthers(page) {
  await inUse(page);
  const euros = { currency: 'EUR' };
  const agreed = [
    { kind: 'said', what: 'wish', text: 'Oil, and it rattles when cold.' },
    { kind: 'said', what: 'keys', value: 'one, red tag' },
    { kind: 'said', what: 'agreed', text: 'Oil and filter.' },
    { kind: 'said', what: 'most', value: '120,00', signs: euros },
    { kind: 'said', what: 'promised', value: '2026-11-24T17:00' },
    { kind: 'found', what: 'damaged', text: 'Scratch on the tank, left.' },
    {
      kind: 'signed',
      what: 'arrival',
      value: '100,300 300,100 450,320 700,150 900,250',
      text: '{"agreed":"Oil.","promised":"2026-11-24T17:00"}',
      signs: { name: 'A. Rider' },
    },
    { kind: 'trouble', text: 'Fork seal leaks.', value: '45', signs: euros },
    { kind: 'answer', what: 'open-job-7', value: 'not-reached', signs: { how: 'phone' } },
  ];
  const handed = [{ kind: 'said', what: 'agreed', text: 'Oil.' }, { kind: 'handed' }];
  await plantIn(
    page,
    'facts',
    ...factsOf('open-job', agreed, 'visit'),
    ...factsOf('closed-job', handed, 'visit'),
  );
  await plantSetting(page, 'forOthers', true);
}

const factTime = '2026-11-24T12:00:00.000Z';

/** Facts of a bike, or of another subject, in order. */
const factsOf = (of, list, book = 'bike') =>
  list.map((fact, n) => ({
    ...fact,
    book,
    of,
    id: `${of}-${n}`,
    time: factTime,
    day: '2026-11-24',
    seq: n + 1,
  }));

/**
 * Name of the phone -> what is particular about it: `before`, functions that run in
 * each of its pages before the page does, and `fill`, which puts into its store what
 * lies there. The page doesn't know of it until it is loaded again.
 */
export const phones = {
  'in use': { before: [voices], fill: inUse },
  new: {},
  crowded: { fill: crowded },
  'ruler matched': {
    fill: async (page) => {
      await inUse(page);
      await plantSetting(page, 'gauge', { edge: '320', ratio: '1' });
    },
  },
  'looked before': { fill: (page) => plantAll(page, [lookedThen, [lookNow, []]]) },
  'several bikes': { before: [voices], fill: severalBikes },
  'works for others': { before: [voices], fill: forOthers },
  overdue: { fill: (page) => plantAll(page, [changeOfOil(450, '12 000 km')]) },
  'writes bills': {
    fill: async (page) => {
      await inUse(page);
      await plantSetting(page, 'bills', true);
    },
  },
  restored: { fill: restored },
  'half written': { fill: halfWritten },
  'hostile texts': { fill: (page) => plantAll(page, [hostileJob()]) },
  'just updated': { fill: justUpdated },
  'update waiting': { before: [updateWaits] },
  'no store': { before: [withoutStore] },
  'store full': { before: [fullStore], fill: inUse },
  'no core': { before: [withoutCore], fill: (page) => plantAll(page, sampleJobs([])) },
  'core restarting': { before: [slowCore] },
  'apple phone': { before: [applePhone] },
};
