import { bench } from './bench/bench.js';
import { bill } from './bill/bill.js';
import { bike } from './plan/bike.js';
import { benchSheet } from './plan/bench-sheet.js';
import { cards } from './cards/cards.js';
import { due } from './due/due.js';
import { edit } from './edit/edit.js';
import { job } from './job/job.js';
import { keep } from './backup/keep.js';
import { record } from './record/record.js';
import { settings } from './settings/settings.js';
import { sheet } from './record/sheet.js';
import { trouble } from './trouble/trouble.js';

export { notifyDue } from './due/notice.js';
export { sweepDrafts } from './store/drafts.js';

/** All screens but the first, by the name in their address, which is also that of their file. */
export const screens = {
  bench,
  'bench-sheet': benchSheet,
  bike,
  bill,
  cards,
  due,
  edit,
  job,
  keep,
  record,
  settings,
  sheet,
  trouble,
};
