import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { newId } from '../site/new-id.js';
import { address } from '../ui/address.js';
import { findings } from '../ui/findings.js';
import { said } from '../ui/said.js';
import { section } from '../ui/section.js';
import { t, text, verbatim } from '../words/catalogue.js';
import { day, today } from '../words/dates.js';
import { entries } from './entries.js';
import { folded, Form, fresh } from './form.js';

/** @import { Can, CanEntry, OilYear } from '../core/core.d.ts' */
/** @import { LogLine } from '../store/records.d.ts' */

/**
 * The book of old oil.
 *
 * @param {import('./book.js').Book} book
 * @param {import('./receipts.js').Receipts} receipts
 * @param {Map<string, LogLine>} lines of the jobs whose old oil may be in no can yet
 */
export function oil(book, receipts, lines) {
  const { cans = [], years = [], findings: found } = book.answer;
  const here = cans.filter(({ gone }) => !gone);
  return html`
    <h1 tabindex="-1">${t('books.oil')}</h1>
    <p>${t('books.oil.how')}</p>
    ${findings(found)} ${waiting(book, lines)} ${here.map((can) => one(can, book, receipts))}
    ${
      years.length
        ? section(
            'books.oil.years',
            html`<ul class="jobs">
              ${years.map(year)}
            </ul>`,
          )
        : nothing
    }
    ${fresh('books.oil.new', newCan(book), here)}
  `;
}

/** The jobs whose old oil is in no can yet. */
function waiting({ answer }, lines) {
  const jobs = new Map();
  for (const { job, volume, kind } of answer.proposed ?? [])
    jobs.set(job, [...(jobs.get(job) ?? []), `${t(kind)}: ${text(volume?.[0])}`]);
  if (!jobs.size) return nothing;
  return section(
    'books.oil.waiting',
    html`<ul class="jobs">
      ${[...jobs].map(([job, oils]) => {
        const line = lines.get(job);
        const said = line ? [text(day(line.summary.finished ?? '')), ...oils] : oils;
        return html`<li>
          <a href=${address('books', 'job', job)}>
            <strong>${line ? text(line.name) : t('record.books')}</strong>
            ${said.map((of) => html`<span>${of}</span>`)}
          </a>
        </li>`;
      })}
    </ul>`,
  );
}

/** @param {OilYear} year */
const year = ({ year: of = 0, sums = [] }) =>
  html`<li>
    <a href=${address('books', 'oil', String(of))}>
      <strong>${of}</strong>
      ${sums.map(({ kind, volume }) => html`<span>${t(kind)}: ${text(volume?.[0])}</span>`)}
    </a>
  </li>`;

/**
 * @param {Can} can
 * @param {import('./book.js').Book} book
 * @param {import('./receipts.js').Receipts} receipts
 */
function one(can, book, receipts) {
  const { id, name, kind, state, holds, size, room, filled = 0, mixed, entries: list = [] } = can;
  return html`<article class="sheet book-item">
    <h2>${name ? verbatim(name) : t('not-known')}</h2>
    <p>${t(kind)}</p>
    ${size ? html`<meter min="0" max="100" high="89" optimum="0" value=${filled} aria-label=${t('books.oil.filled', { name: verbatim(name ?? '') })}></meter>` : nothing}
    <p class="big">
      ${holds ? t(size ? 'books.oil.holds' : 'books.oil.holds-some', { holds: holds[0], size: size?.[0] }) : t('can.empty')}
    </p>
    ${holds ? html`<p class=${state === 'can.room' ? '' : 'book-warn'}>${t(state)}${room ? `. ${t('books.oil.room', { room: room[0] })}` : nothing}</p>` : nothing}
    ${state === 'can.nearly-full' ? html`<p><small>${t('books.oil.practice')}</small></p>` : nothing}
    ${mixed ? html`<p class="book-warn">${t('books.oil.mixed')}</p>` : nothing} ${pour(can, book)}
    ${holds ? handIn(can, book, receipts) : nothing} ${change(can, book)}
    ${entries(book, id, list, (entry) => written(entry, id, receipts))}
  </article>`;
}

/** What came in or went, also where nobody knows how much. */
const moved = (came, volume) =>
  volume
    ? t(came ? 'books.oil.came' : 'books.oil.went', { volume: volume[0] })
    : t(came ? 'books.oil.came-some' : 'books.oil.went-some');

/** What an entry says. */
const written = ({ kind, volume, place, id }, can, receipts) =>
  html`${moved(kind === 'drained', volume)} ${place ? verbatim(place) : nothing}
  ${receipts.draw(can, id)}`;

/**
 * @param {Can} can
 * @param {import('./book.js').Book} book
 */
function pour({ id, waste }, book) {
  const form = new Form(book, `drained ${id}`, [{ name: 'value', word: 'books.oil.volume' }]);
  const keep = () =>
    form.keep(
      id,
      { kind: 'drained', what: waste, value: form.value('value').trim() },
      { say: 'books.kept' },
    );
  return folded(t('books.oil.pour'), form.draw('books.oil.pour-in', keep), form.begun);
}

/**
 * @param {Can} can
 * @param {import('./book.js').Book} book
 * @param {import('./receipts.js').Receipts} receipts
 */
function handIn({ id, holds = [] }, book, receipts) {
  const about = `handed ${id}`;
  const form = new Form(book, about, [
    { name: 'value', word: 'books.day', kind: 'day', told: today() },
    { name: 'text', word: 'books.oil.where' },
  ]);
  const keep = async () => {
    const { value, text: place = '' } = form.values('value', 'text');
    const photo = receipts.chosen(about);
    const told = { kind: 'handed-in', value, text: place };
    const kept = await form.keep(id, told, { photo, say: 'books.kept' });
    if (kept) receipts.taken(about, id);
  };
  return folded(
    t('books.oil.hand-in'),
    html`<p>${t('books.oil.hand-in.how', { holds: holds[0] })}</p>
      ${form.draw('books.oil.handed-in', keep, receipts.choose(about))}`,
    form.begun || Boolean(receipts.chosen(about)),
  );
}

/** The fields that describe a can. */
const described = ({ name = '', waste = 'engine', typed = '' } = {}) => [
  { name: 'text', word: 'books.oil.name', told: name },
  {
    name: 'what',
    word: 'books.oil.kind',
    kind: /** @type {const} */ ('choice'),
    words: limits.wastes ?? [],
    family: 'waste.',
    told: waste,
  },
  { name: 'value', word: 'books.oil.size', told: typed },
];

const canOf = (form) => ({
  kind: 'can',
  what: form.value('what'),
  value: form.value('value').trim(),
  text: form.value('text').trim(),
});

function change(can, book) {
  const form = new Form(book, `can ${can.id}`, described(can));
  const keep = () => form.keep(can.id, canOf(form), { say: 'books.kept' });
  const gone = () =>
    book.tell(`gone ${can.id}`, can.id, { kind: 'gone' }, { say: 'books.gone.said' });
  return folded(
    t('books.oil.change'),
    html`${form.draw('books.keep', keep)}
      <p class="entry">
        <button type="button" class="quiet" @click=${gone}>${t('books.gone')}</button>
      </p>
      ${said('', book.found.get(`gone ${can.id}`))}`,
    form.begun || Boolean(book.found.get(`gone ${can.id}`)?.length),
  );
}

function newCan(book) {
  const form = new Form(book, 'new', described());
  const keep = () => form.keep(newId(), canOf(form), { say: 'books.kept' });
  return { form: form, keep };
}
