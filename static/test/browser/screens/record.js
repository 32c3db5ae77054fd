// The record, when the oil is due again, and what goes out on paper.
import { goTo, plant } from '../job-page.js';
import { polling } from '../page.js';
import { patience } from '../patience.js';
import { choose, field, tap, type, untilSeen } from '../person.js';
import { sampleCard, pieces, words } from '../words.js';
import { on, openAll, plantPhoto } from './on-screen.js';

const gappy = sampleCard('hallowmoor-drover-1360');

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

const to = (address, text) => async (page) => {
  await goTo(page, address);
  await untilSeen(page, text);
  await openAll(page);
};

/** Opens the bill of a job, in that currency; in a bill that was begun, that is folded away. */
const billIn = (currency, job) => async (page) => {
  await goTo(page, `#/bill/${job}`);
  await field(page, words('bill.ask.currency'));
  await openAll(page);
  await type(page, words('bill.ask.currency'), `${currency}\n`);
};

export const record = {
  'record, the list': to('#/record', words('record.due-list')),
  'record, empty': on('new', to('#/record', words('record.none'))),
  'record with a reminder': async (page) => {
    for (const n of [1, 2, 3]) await plant(page, finishedJob(n));
    await goTo(page, '#/record');
    await untilSeen(page, words('remind.go'));
  },
  'record, many jobs': on('crowded', to('#/record', words('log.search'))),
  'record, none found': on('crowded', async (page) => {
    await goTo(page, '#/record');
    await type(page, words('log.search'), 'hovercraft');
    await untilSeen(page, words('bikes.fitting', { count: 0 }));
  }),
  'record, one job': to('#/record/closed-job', words('record.warnings')),
  'record, a job that says when it is due': to('#/record/oil-10', words('due.title')),
  'record, a job with hostile texts': on(
    'hostile texts',
    to('#/record/hostile-job', words('record.notes')),
  ),
  'record, two contents for an entry': on('half written', async (page) => {
    await to('#/record/odd', words('record.disputed'))(page);
  }),
  'record that can only be read': on('half written', to('#/record/broken', words('plain.entries'))),
  'record, a photo enlarged': async (page) => {
    await plantPhoto(page);
    await goTo(page, '#/record/open-job');
    // Not by a finger: what is due comes later, and moves everything after it.
    const enlarged = () => {
      const photo = document.querySelector('.photos button');
      photo?.click();
      return photo !== null;
    };
    await page.waitForFunction(enlarged, { polling, timeout: patience() });
    await tap(page, words('photo.delete'));
    await untilSeen(page, words('photo.delete.sure'));
  },
  'record, what a job cost': on('writes bills', async (page) => {
    await billIn('EUR', 'closed-job')(page);
    await tap(page, words('bill.keep.bill'));
    await untilSeen(page, words('bill.kept'));
    await to('#/record/closed-job', words('record.bill'))(page);
    await untilSeen(page, pieces('record.costs.bill')[0]);
  }),
  'record without a core': on(
    'no core',
    to('#/record/closed-job', words('finding.core-unavailable')),
  ),
  'record without a store': on('no store', to('#/record', words('record.none'))),
  'no such job in the record': (page) => goTo(page, '#/record/none'),
};

export const due = {
  'when the oil is due': to('#/due', words('due.use-first')),
  'when the oil is due, nothing known': on('new', to('#/due', words('due.list.none'))),
  'when the oil is due, overdue': on('overdue', to('#/due', words('due.notice'))),
};

export const sheet = {
  'sheet for the owner': (page) => goTo(page, '#/sheet/closed-job'),
  'sheet for the owner, of an open job': (page) => goTo(page, '#/sheet/open-job'),
  'sheet for the owner, of a visit': on(
    'works for others',
    to('#/sheet/open-job', words('visit.paper.signed')),
  ),
  'no such sheet': (page) => goTo(page, '#/sheet/none'),
};

export const benchSheet = {
  'bench sheet': (page) => goTo(page, `#/bench-sheet/${gappy.id}/{}`),
  'no such bench sheet': (page) => goTo(page, '#/bench-sheet/none/{}'),
};

export const bill = {
  'bill, just begun': to('#/bill/ready-job', words('bill.begin')),
  'bill, all opened': async (page) => {
    await billIn('EUR', 'closed-job')(page);
    await untilSeen(page, words('paper.print'));
    await openAll(page);
  },
  'bill refused': async (page) => {
    await billIn('ERU', 'open-job')(page);
    await untilSeen(page, words('finding.unknown-currency', { text: 'ERU' }));
  },
  estimate: async (page) => {
    await goTo(page, '#/bill/closed-job');
    await choose(page, words('bill.what.estimate'));
    await type(page, words('bill.ask.currency'), 'EUR\n');
    await untilSeen(page, words('bill.estimate.note'));
  },
  'no such bill': (page) => goTo(page, '#/bill/none'),
};
