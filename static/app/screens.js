import { aid } from './aid/aid.js';
import { bench } from './bench/bench.js';
import { bill } from './bill/bill.js';
import { books } from './books/books.js';
import { bike } from './plan/bike.js';
import { benchSheet } from './plan/bench-sheet.js';
import { cards } from './cards/cards.js';
import { details } from './details/details.js';
import { due } from './due/due.js';
import { atOpening } from './due/notice.js';
import { edit } from './edit/edit.js';
import { job } from './job/job.js';
import { keep } from './backup/keep.js';
import { listBeside } from './list-beside.js';
import { label } from './visit/label.js';
import { manual } from './manual/manual.js';
import { offline } from './phone/offline.js';
import { openJobs } from './others/open-jobs.js';
import { record } from './record/record.js';
import { settings } from './settings/settings.js';
import { tellChanges } from './settings/changes.js';
import { sheet } from './record/sheet.js';
import { keepBikes } from './store/bikes.js';
import { sweepDrafts } from './store/drafts.js';
import { keepSteps, writtenBack } from './store/job.js';
import { underFingers } from './ui/under-fingers.js';
import { trouble } from './trouble/trouble.js';
import { visit } from './visit/visit.js';
import { visits } from './visit/visits.js';
import { watchBars } from './ui/bars.js';
import { watchTextSize } from './phone/text-size.js';

export { Later } from './bikes/later.js';
export { Told } from './bikes/told.js';

/** What is to be done once, after the first screen. */
export async function begin(app, root) {
  watchTextSize(root);
  watchBars();
  app.hold = underFingers;
  app.list = listBeside(app);
  writtenBack.see = () => app.fail('job.written-back');
  const { version } = offline.state;
  await Promise.allSettled([
    openJobs.begin(app),
    tellChanges(app),
    atOpening(app),
    keepSteps(version),
    keepBikes(version),
    sweepDrafts(),
  ]);
}

/** All screens but the first, by the name in their address, which is also that of their file. */
export const screens = {
  aid,
  bench,
  'bench-sheet': benchSheet,
  bike,
  bill,
  books,
  cards,
  details,
  due,
  edit,
  job,
  keep,
  label,
  manual,
  record,
  settings,
  sheet,
  trouble,
  visit,
  visits,
};
