// What is told of a bike.
import { goTo } from '../job-page.js';
import { answer, tapText, untilSeen } from '../person.js';
import { words } from '../words.js';
import { on, openAll } from './on-screen.js';

const of = (id) => async (page) => {
  await goTo(page, `#/details/${id}`);
  await untilSeen(page, words('details.figures.how'));
};

export const details = {
  'details of a bike of which nothing is told': of('tessaly-corda-570'),
  'details of a bike, all opened': on('several bikes', async (page) => {
    await of('bertha')(page);
    await openAll(page);
    await tapText(page, words('details.job.move'));
    await answer(page, words('details.join.which'), 'Tessaly Corda 570');
    await untilSeen(page, words('details.join.go'));
  }),
  'details of a bike that was sold': on('several bikes', async (page) => {
    await goTo(page, '#/details/sold');
    await untilSeen(page, words('details.aside.take-up'));
  }),
  'details of a bike that went into another': on('several bikes', async (page) => {
    await goTo(page, '#/details/twice');
    await untilSeen(page, words('details.part'));
  }),
  'details of no bike': (page) => goTo(page, '#/details/none'),
};
