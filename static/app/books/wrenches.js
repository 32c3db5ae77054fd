import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { newId } from '../site/new-id.js';
import { settings } from '../store/settings.js';
import { address } from '../ui/address.js';
import { figureRow } from '../ui/figure.js';
import { finding, findings } from '../ui/findings.js';
import { said } from '../ui/said.js';
import { t, text, verbatim } from '../words/catalogue.js';
import { dayText, today } from '../words/dates.js';
import { entries } from './entries.js';
import { folded, Form, fresh, named } from './form.js';

/** @import { ShownFigure } from '../core/core.d.ts' */

const measured = ['mass', 'lever', 'own', 'centre', 'massOff', 'leverOff'];

/** What a wrench must answer at under the mass that is typed, by wrench. @type {Map<string, ShownFigure[]>} */
const loads = new Map();

/**
 * The book of torque wrenches.
 *
 * @param {import('./book.js').Book} book
 */
export function wrenches(book) {
  const { wrenches: list = [], findings: found } = book.answer;
  const here = list.filter(({ gone }) => !gone);
  return html`
    <h1 tabindex="-1">${t('books.wrenches')}</h1>
    <p>${t('books.wrenches.how')}</p>
    ${findings(found)} ${here.map((wrench) => one(wrench, book))}
    ${fresh('books.wrenches.new', newWrench(book), here)}
  `;
}

function one(wrench, book) {
  const { name, scale = [], drive, state, warns, checked, due, days = 0, uses = 0 } = wrench;
  return html`<article class="sheet book-item">
    <h2>${name ? verbatim(name) : t('not-known')}</h2>
    <p>${[...scale.map(text), drive && verbatim(drive)].filter(Boolean).join(' · ')}</p>
    <p class=${warns ? 'big book-warn' : 'big'}>${t(state)}</p>
    ${
      checked
        ? html`<p>
            ${t('books.wrenches.checked', { date: dayText(checked) })}
            ${days ? t('books.wrenches.since', { count: days }) : nothing}
            ${t('books.wrenches.uses', { count: uses })}
            ${due ? t('books.wrenches.due', { date: dayText(due) }) : nothing}
          </p>`
        : nothing
    }
    ${doubted(wrench)} ${check(wrench, book)} ${elsewhere(wrench, book)} ${change(wrench, book)}
    ${checks(wrench, book)} ${uses_(wrench, book)}
  </article>`;
}

/** The jobs that have to be looked at again. */
const doubted = ({ doubted: list = [] }) =>
  list.length
    ? html`<section>
        <h3>${t('books.wrenches.doubted')}</h3>
        <p class="book-warn">${t('books.wrenches.doubted.do')}</p>
        <ul class="jobs">
          ${list.map(
            ({ job, day, why }) =>
              html`<li>
                <a href=${address('record', job)}>
                  <strong>${dayText(day)}</strong>
                  <span>${t(why)}</span>
                </a>
              </li>`,
          )}
        </ul>
      </section>`
    : nothing;

const checks = ({ id, checks: list = [] }, book) =>
  entries(
    book,
    id,
    list,
    ({ verdict, by, figures = [] }) =>
      html`${t(verdict)} ${by ? html`<small>${verbatim(by)}</small>` : nothing}
      ${figures.length ? folded(t('books.wrenches.figures'), html`<dl>${figures.map(figureRow)}</dl>`) : nothing}`,
  );

/** The jobs that it was used for. */
function uses_({ id, jobs = [] }, book) {
  if (!jobs.length) return nothing;
  const about = `uses ${id}`;
  const drop = (job) => {
    const last = book.facts.findLast(
      (fact) => fact.of === id && fact.kind === 'used' && fact.job === job,
    );
    if (last) book.undo(about, id, last.id);
  };
  return folded(
    t('books.wrenches.jobs', { count: jobs.length }),
    html`<ul class="book-entries">
        ${jobs.map(
          (job) =>
            html`<li>
              <a href=${address('record', job)}>${t('books.job')}</a>
              <button type="button" class="quiet" @click=${() => drop(job)}>
                ${t('books.undo')}
              </button>
            </li>`,
        )}
      </ul>
      ${said('', book.found.get(about))}`,
  );
}

/** A check with a known mass, which says beforehand at what the wrench must answer. */
function check({ id, signs = {} }, book) {
  const before = book.facts.findLast(
    ({ of, kind, signs: of_ }) => of === id && kind === 'checked' && of_?.mass,
  );
  const load = async () => {
    const typed = { ...form.values(...measured), ...given(signs) };
    const { ok } = await call('wrench-check', { ...typed, system: settings.system });
    loads.set(id, ok?.figures ?? []);
    book.app.redraw();
  };
  const form = new Form(book, `checked ${id}`, [
    ...measured.slice(0, 4).map((name) => ({
      name,
      word: `ask.wrench-check.${name}`,
      told: named(before?.signs ?? {}, name),
      chosen: load,
    })),
    ...measured.slice(4).map((name) => ({
      name,
      word: `ask.wrench-check.${name}`,
      told: named(before?.signs ?? {}, name),
      chosen: load,
    })),
    { name: 'readings', word: 'books.wrenches.readings', lines: true },
    { name: 'day', word: 'books.day', kind: /** @type {const} */ ('day'), told: today() },
  ]);
  const keep = async () => {
    const fact = { kind: 'checked', signs: form.values(...measured, 'readings', 'day') };
    if (await form.keep(id, fact, { say: 'books.kept' })) loads.delete(id);
  };
  const figures = loads.get(id) ?? [];
  return folded(
    t('books.wrenches.check'),
    html`${finding({ code: 'mass-falls', grade: 'doubt' })}
    ${form.draw('books.keep', keep, figures.length ? html`<dl>${figures.map(figureRow)}</dl>` : nothing)}`,
    form.begun,
  );
}

/** What the calculation takes from the description. */
const given = (signs) =>
  Object.fromEntries(
    ['high', 'tool', 'graduation'].map((name) => [name, named(signs, name)]).filter(([, v]) => v),
  );

/** A check that somebody else made. */
function elsewhere({ id }, book) {
  const form = new Form(book, `elsewhere ${id}`, [
    {
      name: 'value',
      word: 'books.wrenches.verdict',
      kind: 'choice',
      words: ['within', 'outside'],
      family: 'wrench-check.',
    },
    { name: 'text', word: 'books.wrenches.by' },
    { name: 'day', word: 'books.day', kind: 'day', told: today() },
  ]);
  const keep = () => {
    const { value = '', text: by = '', ...signs } = form.values('value', 'text', 'day');
    const fact = { kind: 'checked', what: 'elsewhere', value, text: by, signs };
    return form.keep(id, fact, { say: 'books.kept' });
  };
  return folded(t('books.wrenches.elsewhere'), form.draw('books.keep', keep), form.begun);
}

/** The fields that describe a wrench. */
const described = ({ name = '', signs = {} } = {}) => [
  { name: 'text', word: 'books.wrenches.name', told: name },
  ...['high', 'low', 'drive', 'graduation'].map((of) => ({
    name: of,
    word: `books.wrenches.${of}`,
    told: named(signs, of),
  })),
  {
    name: 'tool',
    word: 'books.wrenches.tool',
    kind: /** @type {const} */ ('choice'),
    words: ['click', 'dial', 'beam'],
    family: 'torque-tool.',
    told: named(signs, 'tool'),
  },
];

const wrenchOf = (form) => ({
  kind: 'wrench',
  text: form.value('text').trim(),
  signs: form.values('high', 'low', 'drive', 'graduation', 'tool'),
});

function change(wrench, book) {
  const { id } = wrench;
  const form = new Form(book, `wrench ${id}`, described(wrench));
  const keep = () => form.keep(id, wrenchOf(form), { say: 'books.kept' });
  const gone = () => book.tell(`gone ${id}`, id, { kind: 'gone' }, { say: 'books.gone.said' });
  return folded(
    t('books.wrenches.change'),
    html`${form.draw('books.keep', keep)}
      <p class="entry">
        <button type="button" class="quiet" @click=${gone}>${t('books.gone')}</button>
      </p>`,
    form.begun,
  );
}

function newWrench(book) {
  const form = new Form(book, 'new', described());
  const keep = () => form.keep(newId(), wrenchOf(form), { say: 'books.kept' });
  return { form: form, keep };
}
