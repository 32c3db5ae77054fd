// First aid: its cards, from a step and by themselves.
import { goTo } from '../job-page.js';

const from = encodeURIComponent(JSON.stringify({ job: 'open-job', step: 'lay-out' }));

/** @param {string} kind */
const card = (kind) => (page) => goTo(page, `#/aid/${kind}/${from}`);

export const aid = {
  'first aid, which': (page) => goTo(page, '#/aid'),
  'first aid for a burn': card('burn'),
  'first aid for an eye': card('eye'),
  'first aid for something swallowed': card('swallowed'),
  'first aid for a cut': card('cut'),
  'first aid for oil under the skin': card('injected'),
};
