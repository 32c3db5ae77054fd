import { bench } from './view/bench.js';
import { benchSheet } from './view/bench-sheet.js';
import { bill } from './view/bill.js';
import { cards } from './view/cards.js';
import { due } from './view/due.js';
import { edit } from './view/edit.js';
import { job } from './view/job.js';
import { keep } from './view/keep.js';
import { ownerSheet } from './view/owner-sheet.js';
import { plan } from './view/plan.js';
import { record } from './view/record.js';
import { settings } from './view/settings.js';
import { trouble } from './view/trouble.js';

export { tellDue } from './view/due-notice.js';

/** All screens but the first, by the name in their address. */
export const screens = {
  bike: plan,
  job,
  record,
  bench,
  cards,
  due,
  edit,
  settings,
  keep,
  sheet: ownerSheet,
  trouble,
  'bench-sheet': benchSheet,
  bill,
};
