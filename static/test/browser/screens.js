// Every screen of the page, each with the way to it.
import { ownCard, packOf, paste, tick } from './cards-page.js';
import { goTo, plant, stored } from './job-page.js';
import { plantPicture } from './photos-page.js';
import { answer, choose, tap, tapText, type, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const gappy = sampleCard('hallowmoor-drover-1700');

const openAll = (page) =>
  page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });

const step =
  (id, job = 'open-job') =>
  async (page) => {
    await goTo(page, `#/job/${job}/step/${id}`);
    await openAll(page);
  };

/** Puts a photo into the open job. */
async function plantPhoto(page) {
  const time = '2026-11-24T09:10:00.000Z';
  const event = { id: 'photo', time, kind: 'photo', step: 'look-oil', what: 'pan' };
  const job = (await stored(page, 'jobs')).find(({ id }) => id === 'open-job');
  await plant(page, job, [event]);
  await plantPicture(page, { job: job.id, id: event.id, what: event.what });
}

/** A job that no backup holds. */
function finishedJob(n) {
  const at = `2026-10-0${n}T09:00:00.000Z`;
  const { make, model } = gappy;
  const summary = { finished: at, done: 3, steps: 38 };
  return {
    id: `finished-${n}`,
    name: `${make} ${model}`,
    started: at,
    card: gappy,
    bench: {},
    summary,
  };
}

const calculation = (op, given) => async (page) => {
  await goTo(page, `#/bench/${op}/${encodeURIComponent(JSON.stringify(given))}`);
  await untilSeen(page, words(`calc.${op}`));
  await tap(page, words('bench.work'));
  await openAll(page);
};

const flakes = async (page) => {
  await step('look-filter-filter')(page);
  await answer(page, words('ask.found'), words('bit.flakes'));
  await untilSeen(page, words('debris.watch'));
  await openAll(page);
};

const wrenches = [
  { id: 'short', low: '5 N·m', high: '25 N·m' },
  { id: 'long', low: '20 N·m', high: '100 N·m', graduation: '0.5 N·m' },
];

/** Name of the screen -> the way to it. The sample jobs must lie in the store. */
export const screens = {
  bikes: async (page) => {
    await goTo(page, '#/bikes');
    await untilSeen(page, words('bikes.resume'));
  },
  'plan, all opened': async (page) => {
    await goTo(page, `#/bike/${gappy.id}`);
    await untilSeen(page, words('plan.start'));
    await openAll(page);
    await choose(page, words('role.gearbox'));
    await untilSeen(page, words('plan.gaps.note'));
    await openAll(page);
  },
  'step with DANGER': step('first-start'),
  'step with a timer': step('run-out'),
  'step with a timer that counts': step('run-out', 'timed-job'),
  'step with a timer that is over': step('leak-look', 'timed-job'),
  'step with the timers of others': step('first-start', 'timed-job'),
  'step with readings': step('top-up-engine'),
  'step with a reading refused': async (page) => {
    await step('tighten-drain')(page);
    await type(page, words('ask.torque'), 'four');
    await tap(page, words('job.keep'));
    await untilSeen(page, words('finding.not-a-number', { text: 'four' }));
  },
  'step with photos': async (page) => {
    await plantPhoto(page);
    await goTo(page, '#/record'); // a job that is on the screen doesn't read its events again
    await goTo(page, '#/job/open-job/step/look-oil');
    await page.waitForSelector('.photos img');
    await openAll(page);
  },
  'photo enlarged': async (page) => {
    await goTo(page, '#/record/open-job');
    await (await page.waitForSelector('.photos button')).click();
    await tap(page, words('photo.delete'));
  },
  backup: async (page) => {
    await goTo(page, '#/keep');
    await tap(page, words('keep.make'));
    await untilSeen(page, words('keep.save'));
    await tapText(page, words('room.erase'));
  },
  'erase everything': (page) => goTo(page, '#/keep/erase'),
  'record with a reminder': async (page) => {
    for (const n of [1, 2, 3]) await plant(page, finishedJob(n));
    await goTo(page, '#/record');
    await untilSeen(page, words('remind.go'));
  },
  'look with a stop': async (page) => {
    await step('look-magnet-drain')(page);
    await answer(page, words('ask.found'), words('bit.part'));
    await untilSeen(page, words('debris.stop'));
    await openAll(page);
  },
  'ruler, not matched': flakes,
  'ruler, being matched': async (page) => {
    await flakes(page);
    await tap(page, words('gauge.match'));
    await untilSeen(page, words('gauge.match.how'));
  },
  deciding: step('decide'),
  'all steps': (page) => goTo(page, '#/job/open-job/steps'),
  closing: async (page) => {
    await goTo(page, '#/job/ready-job');
    await untilSeen(page, words('job.finish.ready'));
  },
  'record, the list': async (page) => {
    await goTo(page, '#/record');
    await openAll(page);
  },
  'record, one job': async (page) => {
    await goTo(page, '#/record/closed-job');
    await untilSeen(page, words('record.warnings'));
  },
  'record, a job that says when it is due': async (page) => {
    await goTo(page, '#/record/oil-10');
    await untilSeen(page, words('due.title'));
    await openAll(page);
  },
  'when the oil is due': async (page) => {
    await goTo(page, '#/due');
    await untilSeen(page, words('due.use-first'));
  },
  'second look': step('second-look'),
  'sheet for the owner': (page) => goTo(page, '#/sheet/closed-job'),
  'bench sheet': (page) => goTo(page, `#/bench-sheet/${gappy.id}/{}`),
  bench: async (page) => {
    await goTo(page, '#/bench');
    await untilSeen(page, words('bench.intro'));
  },
  'calculation: viscosity': calculation('oil-curve', { grade: '10W-40' }),
  'calculation: running out': calculation('run-out', {
    volume: '3 L',
    hole: '12 mm',
    temperature: '65 °C',
  }),
  'calculation: wrenches': calculation('wrench', { torque: '25 N·m', wrenches }),
  'calculation: level window': calculation('level', {
    gauge: 'window',
    band: '400 mL',
    share: '20 %',
  }),
  'calculation: bottles': calculation('bottles', {
    need: '2.6 L',
    bottles: [{ size: '4 L', left: '1 L' }, { size: '2 L' }],
  }),
  'calculation refused': calculation('torque-check', { what: 'plug', thread: 'M99', torque: '25' }),
  cards: async (page) => {
    await goTo(page, '#/cards');
    await tick(page, gappy.model);
    await openAll(page);
  },
  'cards of a pack': async (page) => {
    const [one, other] = [ownCard('one', 'One'), ownCard('other', 'Other')];
    await paste(page, packOf(one, { ...other, layout: 'hovercraft' }, gappy, other));
    await untilSeen(page, words('pack.nothing-yet'));
  },
  'cards as QR codes': async (page) => {
    await goTo(page, `#/cards/show/${gappy.id}`);
    await openAll(page);
  },
  'cards from QR codes': (page) => goTo(page, '#/cards/read'),
  'editor: a new card': async (page) => {
    await goTo(page, '#/edit');
    await untilSeen(page, words('edit.layout'));
    await openAll(page);
  },
  'editor: a card with doubts': async (page) => {
    await goTo(page, '#/edit');
    await tapText(page, words('layout.wet-sump'));
    for (const [name, text] of [
      ['/bolts/0/thread', 'M12x1.5'],
      ['/bolts/0/torque', '177 Nm'],
    ])
      await (await page.waitForSelector(`[name="${name}"]`)).type(`${text}\n`);
    await untilSeen(page, words('finding.torque-unit.do'));
    await openAll(page);
  },
  'problems, the list': (page) => goTo(page, '#/trouble'),
  'problem with questions': async (page) => {
    await goTo(page, '#/trouble/drop-wheel');
    await untilSeen(page, words('trouble.open'));
  },
  'problem from a step, things at hand': async (page) => {
    const state = { answers: { lamp: 'out' }, hand: ['near'], job: 'open-job', step: 'lay-out' };
    await goTo(page, `#/trouble/too-little/${encodeURIComponent(JSON.stringify(state))}`);
    await untilSeen(page, words('outcome.ride-gently'));
  },
  'problem that stops, on a step': async (page) => {
    await goTo(page, '#/job/stopped-job');
    await untilSeen(page, words('trouble.take-back'));
  },
  'bill, all opened': async (page) => {
    await goTo(page, '#/bill/closed-job');
    await type(page, words('bill.ask.currency'), 'EUR\n');
    await untilSeen(page, words('paper.print'));
    await openAll(page);
  },
  'bill refused': async (page) => {
    await goTo(page, '#/bill/open-job');
    await type(page, words('bill.ask.currency'), 'ERU\n');
    await untilSeen(page, words('finding.unknown-currency', { text: 'ERU' }));
  },
  settings: (page) => goTo(page, '#/settings'),
  'no such bike': (page) => goTo(page, '#/bike/none'),
};
