// Every screen of the page in its states, each with the way to it: one list for the
// tests that look at all of them and for the page of stories.
import { aid } from './screens/aid.js';
import { bench } from './screens/bench.js';
import { bike, bikes } from './screens/bikes.js';
import { books } from './screens/books.js';
import { cards, edit } from './screens/cards.js';
import { job } from './screens/job.js';
import { details } from './screens/details.js';
import { manual } from './screens/manual.js';
import { benchSheet, bill, due, record, sheet } from './screens/record.js';
import { keep, settings } from './screens/settings.js';
import { trouble } from './screens/trouble.js';
import { label, visit, visits } from './screens/visit.js';

/**
 * Name of the screen in its address -> name of the state -> the way to it. A way is
 * gone on the phone that its `phone` names (phones.js), else on the one in use.
 */
export const screens = {
  bikes,
  bike,
  details,
  job,
  record,
  due,
  sheet,
  'bench-sheet': benchSheet,
  bill,
  visit,
  visits,
  label,
  books,
  bench,
  cards,
  edit,
  manual,
  settings,
  keep,
  trouble,
  aid,
};

/** The phone on which a way is gone. */
export const phoneOf = ({ phone = 'in use' }) => phone;
