// The own books, with something in each of them.
import { bookFacts, drainedJob } from '../book-facts.js';
import { goTo, plant, plantIn } from '../job-page.js';
import { untilSeen } from '../person.js';
import { words } from '../words.js';
import { openAll } from './on-screen.js';

/** To a part of the books, all of it opened. */
const to = (part, text) => async (page) => {
  await plantIn(page, 'facts', ...bookFacts('drained-job'));
  await plant(page, ...drainedJob());
  await goTo(page, `#/books/${part}`);
  await untilSeen(page, text);
  await openAll(page);
};

export const books = {
  'books of old oil, what was handed in': to('oil', words('books.oil.years')),
  'books of old oil, the table of a year': to('oil/2026', words('books.csv')),
  'books, the shelf': to('shelf', words('books.shelf.new')),
  'books, torque wrenches': to('wrenches', words('books.wrenches.new')),
  'books, what a job puts in': to('job/drained-job', words('books.shelf.look')),
};
