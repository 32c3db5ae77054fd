// A job: its steps, what is written down at them, and its end.
import { chooseSmallPicture, chooseText } from '../choose-file.js';
import { eventsTo } from '../job-events.js';
import { goTo, planOf, plant, stored, tapDone, untilReady } from '../job-page.js';
import { answer, choose, tap, type, untilSeen } from '../person.js';
import { pieces, words } from '../words.js';
import { on, openAll, plantPhoto, step } from './on-screen.js';

const told = async (page, bit, verdict) => {
  await answer(page, words('ask.found'), words(`bit.${bit}`));
  await untilSeen(page, words(verdict));
  await openAll(page);
};

const flakes = async (page) => {
  await step('look-filter-filter')(page);
  await told(page, 'flakes', 'debris.watch');
};

/** A job with its drain plug, its filler and its filter off; a screen of it. */
const halfOpen = (screen) => async (page) => {
  const job = (await stored(page, 'jobs')).find(({ id }) => id === 'timed-job');
  const steps = job.steps ?? (await planOf(page, job.card)).steps.map(({ id }) => id);
  const half = { ...job, id: 'half-open', steps };
  await plant(page, half, eventsTo(half, 'clean-seats'));
  await goTo(page, `#/job/half-open/${screen}`);
  await page.waitForSelector('.still-open');
  await openAll(page);
};

const picture = 'input[id^="photo-choose"]';

export const job = {
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
  'step with what was kept': async (page) => {
    await goTo(page, '#/job/closed-job/step/tighten-drain');
    await untilSeen(page, words('job.kept', { value: '29 N·m · 21.4 lbf·ft' }));
  },
  'step that is done': async (page) => {
    await goTo(page, '#/job/open-job/step/lay-out');
    await untilSeen(page, words('job.next'));
  },
  'on one page': async (page) => {
    await goTo(page, '#/job/open-job/page');
    await page.waitForSelector('.job-page li');
    await openAll(page);
  },
  'a stage on one page': async (page) => {
    await goTo(page, '#/job/closed-job/stage/close');
    await page.waitForSelector('.job-page li');
  },
  'step with the brake': async (page) => {
    await goTo(page, '#/job/open-job/step/look-magnet-drain');
    await untilReady(page);
    await tap(page, words('job.done'));
    await untilSeen(page, words('job.brake'));
  },
  'step with the level dragged': async (page) => {
    await step('level-found-engine')(page);
    const slider = await page.waitForSelector('.drag input');
    await slider.evaluate((element) => {
      element.value = '20';
      element.dispatchEvent(new Event('input', { bubbles: true }));
    });
    await untilSeen(page, words('level.keep', { share: 20 }));
  },
  'step read aloud, and listening': async (page) => {
    await step('run-out')(page);
    await tap(page, words('hands.read'));
    await untilSeen(page, words('hands.reading'));
    await choose(page, words('hands.listen'));
  },
  'step with a picture that no browser reads': async (page) => {
    await step('look-oil')(page);
    await chooseText(page, picture, 'shot.heic', 'no picture');
    await untilSeen(page, words('photo.unreadable'));
  },
  'step with a picture that can’t be kept': on('store full', async (page) => {
    await step('look-oil')(page);
    await chooseSmallPicture(page, picture);
    await untilSeen(page, words('photo.waiting'));
  }),
  'step on a phone that is full': on('store full', async (page) => {
    await step('identify')(page);
    await type(page, words('ask.odometer'), '12 400 km');
    await tap(page, words('job.keep'));
    await untilSeen(page, words('store.full'));
  }),
  'step with hostile texts': on('hostile texts', step('tighten-drain', 'hostile-job')),
  'step with photos': async (page) => {
    await plantPhoto(page);
    await goTo(page, '#/job/open-job/step/look-oil');
    await page.waitForSelector('.photos img');
    await openAll(page);
  },
  'step with a photo that is gone': on('writes bills', async (page) => {
    await plantPhoto(page, 'gone', true);
    await goTo(page, '#/job/open-job/step/look-oil');
    await untilSeen(page, pieces('photo.gone').at(-1));
  }),
  'look with a stop': async (page) => {
    await step('look-magnet-drain')(page);
    await told(page, 'part', 'debris.stop');
  },
  'look that found nothing': async (page) => {
    await step('look-magnet-drain')(page);
    await told(page, 'nothing', 'debris.normal');
  },
  'look with a question open': async (page) => {
    await step('look-magnet-drain')(page);
    await told(page, 'paste', 'debris.partly');
  },
  'look, more than the last time': on('looked before', async (page) => {
    await step('look-magnet-drain', 'now')(page);
    await told(page, 'glitter', 'debris.stop');
    await untilSeen(page, words('look.not-more'));
  }),
  'ruler, not matched': flakes,
  'ruler, being matched': async (page) => {
    await flakes(page);
    await tap(page, words('gauge.match'));
    await untilSeen(page, words('gauge.match.how'));
  },
  'ruler, true to scale': on('ruler matched', async (page) => {
    await flakes(page);
    await untilSeen(page, words('gauge.true'));
  }),
  deciding: step('decide'),
  'deciding after a stop': async (page) => {
    await step('look-magnet-drain', 'timed-job')(page);
    await told(page, 'part', 'debris.stop');
    await tap(page, words('look.keep'));
    await untilSeen(page, `✓ ${words('look.kept')}`);
    await step('decide', 'timed-job')(page);
    await untilSeen(page, words('debris.stop'));
  },
  'step while something is open': halfOpen('step/clean-seats'),
  'step at which nothing may be open': halfOpen('step/first-start'),
  'all steps, something open': halfOpen('steps'),
  'places to touch, one ticked': async (page) => {
    await step('count')(page);
    await page.$eval('.tally input', (box) => box.click());
    await untilSeen(page, words('draft.written'));
  },
  'second look': step('second-look'),
  'second look, not told': async (page) => {
    await step('second-look', 'closed-job')(page);
    await tapDone(page);
    await untilSeen(page, words('finding.leak-not-said'));
  },
  'problem that stops, on a step': async (page) => {
    await goTo(page, '#/job/stopped-job');
    await untilSeen(page, words('trouble.take-back'));
  },
  'step with something typed': on('half written', async (page) => {
    await step('lay-out')(page);
    await untilSeen(page, words('job.drafted'));
  }),
  'all steps, something typed': on('half written', (page) => goTo(page, '#/job/open-job/steps')),
  'step, just taken back': on('half written', async (page) => {
    await step('lay-out', 'timed-job')(page);
    await tap(page, words('job.undo'));
    await untilSeen(page, words('job.redo'));
  }),
  'job that can only be read': on('half written', (page) => goTo(page, '#/job/broken')),
  'all steps': (page) => goTo(page, '#/job/open-job/steps'),
  closing: async (page) => {
    await goTo(page, '#/job/ready-job');
    await untilSeen(page, words('job.finish.ready'));
  },
  'job without a core': on('no core', async (page) => {
    await goTo(page, '#/job/open-job');
    await untilSeen(page, words('finding.core-unavailable'));
  }),
  'no such job': (page) => goTo(page, '#/job/none'),
};
