// Every screen of the page, each with the way to it.
import { goTo } from './job-page.js';
import { choose, tap, type, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

const gappy = sampleCard('hallowmoor-drover-1700');

const openAll = (page) =>
  page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });

const step = (id) => async (page) => {
  await goTo(page, `#/job/open-job/step/${id}`);
  await openAll(page);
};

const convert = (text, answer) => async (page) => {
  await goTo(page, '#/bench');
  await type(page, words('bench.convert.label'), text);
  await tap(page, words('bench.convert'));
  await untilSeen(page, answer);
};

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
  'step with readings': step('top-up-engine'),
  'step with a reading refused': async (page) => {
    await step('tighten-drain')(page);
    await type(page, words('ask.torque'), 'four');
    await tap(page, words('job.keep'));
    await untilSeen(page, words('finding.not-a-number', { text: 'four' }));
  },
  'all steps': (page) => goTo(page, '#/job/open-job/steps'),
  closing: async (page) => {
    await goTo(page, '#/job/ready-job');
    await untilSeen(page, words('job.finish.ready'));
  },
  'record, the list': (page) => goTo(page, '#/record'),
  'record, one job': async (page) => {
    await goTo(page, '#/record/closed-job');
    await untilSeen(page, words('record.warnings'));
  },
  'bench with a result': convert('18 ft-lb', 'N·m'),
  'bench with a refusal': convert('18 parsecs', words('finding.unknown-unit', { text: 'parsecs' })),
  settings: (page) => goTo(page, '#/settings'),
  'no such bike': (page) => goTo(page, '#/bike/none'),
};
