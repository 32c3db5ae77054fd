// A customer's visit, today's visits, and the label.
import { goTo } from '../job-page.js';
import { untilSeen } from '../person.js';
import { words } from '../words.js';
import { on, openAll } from './on-screen.js';

const of = (address, text) =>
  on('works for others', async (page) => {
    await goTo(page, address);
    await untilSeen(page, text);
    await openAll(page);
  });

export const visit = {
  'visit, just begun': of('#/visit/ready-job', words('visit.sign.nothing')),
  'visit, with trouble': of('#/visit/open-job', words('visit.ask-first', { count: 1 })),
  'no such visit': (page) => goTo(page, '#/visit/none'),
};

export const visits = {
  'today’s visits': of('#/visits', words('visit.stage.asking')),
  'no visits today': (page) => goTo(page, '#/visits'),
};

export const label = {
  label: (page) => goTo(page, '#/label/closed-job'),
  'no such label': (page) => goTo(page, '#/label/none'),
};
