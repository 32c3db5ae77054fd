import { html, nothing } from 'lit-html';
import { loadLimits } from '../core/limits.js';
import { openJob } from '../plain/open.js';
import { watchDrafts } from '../store/drafts.js';
import { watchFacts } from '../store/windows.js';
import { address } from '../ui/address.js';
import { loadWordsOf, t } from '../words/catalogue.js';
import { Book } from './book.js';
import { chosenOf, list } from './list.js';
import { OfJob } from './of-job.js';
import { oil } from './oil.js';
import { Receipts } from './receipts.js';
import { shelf } from './shelf.js';
import { drainedLately } from './drained.js';
import { bikesToChoose, wantsOf } from './wants.js';
import { wrenches } from './wrenches.js';
import { YearTable } from './year.js';

/**
 * The own books: "#/books" lists them, "#/books/oil", "#/books/shelf" and "#/books/wrenches"
 * open one, "#/books/oil/2026" is the table of a year, "#/books/list" what open jobs need,
 * "#/books/job/ID" what a job puts into all of them.
 */
export async function books([part = '', of = ''], app) {
  await Promise.all([...['books', 'bench', 'due', 'keep', 'paper'].map(loadWordsOf), loadLimits()]);
  const screen = { name: 'books', tab: 'settings', title: t('books.title') };
  const shown = await partOf(part, of, app);
  if (shown.plain) return Object.assign(screen, shown.plain);
  const ends = [
    watchDrafts(() => app.redraw()),
    ...shown.books.map((book) =>
      watchFacts(book.name, undefined, () =>
        book.load().then(
          () => app.redraw(),
          () => {},
        ),
      ),
    ),
  ];
  return Object.assign(screen, {
    title: t(shown.title),
    draw: () => html`${part ? back() : nothing} ${shown.draw()}`,
    close: () => {
      for (const end of ends) end();
      shown.close?.();
    },
  });
}

/**
 * A part of the books: what it is called, how it is drawn, and which books it shows.
 *
 * @returns {Promise<{ books: Book[], title: string, draw: () => unknown, close?: () => void, plain?: any }>}
 */
async function partOf(part, of, app) {
  switch (part) {
    case 'oil':
      return oilPart(of, app);
    case 'shelf': {
      const book = await Book.open('shelf', app);
      return { books: [book], title: 'books.shelf', draw: () => shelf(book) };
    }
    case 'list': {
      const book = await Book.open('shelf', app);
      const bikes = (await app.attempt(() => bikesToChoose())) ?? new Map();
      const choose = async (/** @type {string[]} */ ids) => {
        book.drafts.put('list', ids);
        book.asked = { wants: await wantsOf(ids) };
        await book.load();
      };
      await app.attempt(() => choose(chosenOf(book)));
      const act = (ids) => app.attempt(() => choose(ids)).then(() => app.redraw());
      return { books: [book], title: 'books.list', draw: () => list(book, bikes, act) };
    }
    case 'wrenches': {
      const book = await Book.open('wrench', app);
      return { books: [book], title: 'books.wrenches', draw: () => wrenches(book) };
    }
    case 'job': {
      const { job, plain } = await openJob(of, app);
      if (!job) return { books: [], title: 'record.books', draw: () => nothing, plain };
      const put = await OfJob.open(job, app);
      return { books: put.books, title: 'record.books', draw: () => put.draw() };
    }
  }
  return { books: [], title: 'books.title', draw: contents };
}

async function oilPart(of, app) {
  const book = await Book.open('oil', app);
  // It needs none of them, and some take a while.
  let jobs = new Map();
  const lately = async () => {
    const { jobs: drained, lines } = await drainedLately();
    book.asked = { jobs: drained };
    jobs = lines;
    await book.load();
    app.redraw();
  };
  if (!of) lately().catch(() => {});
  const { cans = [], years = [] } = book.answer;
  const receipts = new Receipts(app);
  receipts.load(cans.map(({ id }) => id));
  const year = years.find(({ year: number }) => String(number) === of);
  const table = year && new YearTable(year, app, receipts);
  return {
    books: [book],
    title: 'books.oil',
    draw: () => (table ? table.draw() : oil(book, receipts, jobs)),
    close: () => receipts.close(),
  };
}

const back = () =>
  html`<p class="off-paper"><a href=${address('books')}>${t('books.title')}</a></p>`;

/** All of the books. */
const contents = () =>
  html`<h1 tabindex="-1">${t('books.title')}</h1>
    <ul class="jobs">
      ${['oil', 'shelf', 'list', 'wrenches'].map(
        (part) =>
          html`<li>
            <a href=${address('books', part)}>
              <strong>${t(`books.${part}`)}</strong>
              <span>${t(`books.${part}.how`)}</span>
            </a>
          </li>`,
      )}
    </ul>`;
