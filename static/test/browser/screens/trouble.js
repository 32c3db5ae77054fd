// Something is wrong: the doors, the problems and what to do about them.
import { troubleAt } from '../../../app/trouble/address.js';
import { goTo } from '../job-page.js';
import { type, untilSeen } from '../person.js';
import { words } from '../words.js';
import { on, openAll } from './on-screen.js';

const problem = (id, state, outcome) => async (page) => {
  await goTo(page, troubleAt(id, state));
  await untilSeen(page, words(`outcome.${outcome}`));
};

export const trouble = {
  'problems, the doors': (page) => goTo(page, '#/trouble'),
  'problems, behind a door': async (page) => {
    await goTo(page, troubleAt('', { door: 'drop' }));
    await untilSeen(page, words('fault.drop-plug'));
  },
  'problems, how this bike is read': async (page) => {
    await goTo(page, troubleAt('', { door: 'amount', bike: 'hallowmoor-drover-1360' }));
    await untilSeen(page, words('reading.title'));
    await openAll(page);
  },
  'problem, what to say to whoever fetches it': async (page) => {
    await goTo(page, troubleAt('drop-plug', { bike: 'hallowmoor-drover-1360' }));
    await untilSeen(page, words('say.title'));
    await openAll(page);
  },
  'problems, from a step': async (page) => {
    await goTo(page, troubleAt('', { job: 'open-job', step: 'lay-out' }));
    await untilSeen(page, words('fault.wrong-filter'));
  },
  'problems, none found': async (page) => {
    await goTo(page, '#/trouble');
    await type(page, words('trouble.search'), 'puncture');
    await untilSeen(page, words('trouble.none'));
  },
  'problem with questions': async (page) => {
    await goTo(page, '#/trouble/drop-wheel');
    await untilSeen(page, words('trouble.open'));
  },
  'problem from a step, things at hand': problem(
    'too-little',
    { answers: { lamp: 'out' }, hand: ['near'], job: 'open-job', step: 'lay-out' },
    'ride-gently',
  ),
  'problem that lets one carry on': problem(
    'smoke-pipe',
    { answers: { pipe: 'spilt' } },
    'carry-on',
  ),
  'problem that forbids to start': problem('milky', { answers: { milk: 'all' } }, 'do-not-start'),
  'problem of which nothing fits': problem(
    'toppled',
    { answers: { airbox: 'other', lying: 'other', leak: 'other', lever: 'other' } },
    'do-not-start',
  ),
  'problem that a calculation judges': problem(
    'metal',
    { answers: { bits: 'grey' } },
    'do-not-start',
  ),
  'problems, one slip of a letter': async (page) => {
    await goTo(page, '#/trouble');
    const [name] = words('fault.smoke-exhaust').match(/\p{L}{6,}/u);
    await type(page, words('trouble.search'), name.slice(0, 2) + name.slice(3));
    await untilSeen(page, words('trouble.near'));
  },
  'problem that first aid goes before': async (page) => {
    await goTo(page, '#/trouble/burnt');
    await untilSeen(page, words('until.person'));
  },
  'problem without a core': on('no core', async (page) => {
    await goTo(page, '#/trouble/drop-wheel');
    await untilSeen(page, words('finding.core-unavailable'));
  }),
  'no such problem': (page) => goTo(page, '#/trouble/none'),
};
