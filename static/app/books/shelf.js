import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { newId } from '../site/new-id.js';
import { address } from '../ui/address.js';
import { findings } from '../ui/findings.js';
import { t, text, verbatim } from '../words/catalogue.js';
import { dayText, today } from '../words/dates.js';
import { entries } from './entries.js';
import { folded, Form, fresh, named } from './form.js';

/**
 * The book of the shelf.
 *
 * @param {import('./book.js').Book} book
 */
export function shelf(book) {
  const { items = [], findings: found } = book.answer;
  const here = items.filter(({ gone }) => !gone);
  return html`
    <h1 tabindex="-1">${t('books.shelf')}</h1>
    <p>${t('books.shelf.how')}</p>
    <p><a class="button quiet" href=${address('books', 'list')}>${t('books.list')}</a></p>
    ${findings(found)} ${here.map((item) => one(item, book))}
    ${fresh('books.shelf.new', newItem(book), here)}
  `;
}

/** @import { ShelfItem } from '../core/core.d.ts' */

/**
 * What is told of a thing, in short.
 *
 * @param {ShelfItem} item
 */
const marks = ({ what, signs = {} }) =>
  [
    t(`goods.${what}`),
    verbatim(named(signs, 'grade')),
    verbatim(named(signs, 'marks')),
    verbatim(named(signs, 'number')),
    named(signs, 'seal') && t(`seal.${named(signs, 'seal')}`),
    what === 'oil' && named(signs, 'size')
      ? t('books.shelf.bottles', { size: verbatim(named(signs, 'size')) })
      : verbatim(named(signs, 'size')),
    named(signs, 'for') && t('books.shelf.is-for', { use: verbatim(named(signs, 'for')) }),
  ].filter(Boolean);

function one(item, book) {
  const { id, name, left, out, opened, what, entries: list = [] } = item;
  return html`<article class="sheet book-item">
    <h2>${name ? verbatim(name) : t('not-known')}</h2>
    <p>${marks(item).join(' · ')}</p>
    <p class="big">${left ? left.map(text).join(' · ') : t('books.shelf.left-unknown')}</p>
    ${out ? html`<p class="book-warn">${t('books.shelf.out')}</p>` : nothing}
    ${opened ? html`<p>${t('books.shelf.opened', { date: dayText(opened) })}</p>` : nothing}
    ${counting(item, book)} ${what === 'oil' ? opening(item, book) : nothing} ${change(item, book)}
    ${entries(book, id, list, ({ kind, texts }) => t(`books.shelf.${kind}`, { much: texts?.[0] ?? '' }))}
  </article>`;
}

/** Taking from the shelf and adding to it, without a job. */
function counting({ id, what }, book) {
  const field = {
    name: 'value',
    word: what === 'oil' ? 'books.shelf.volume' : 'books.shelf.count',
  };
  const form = (kind) => new Form(book, `${kind} ${id}`, [field]);
  return ['used', 'added'].map((kind) => {
    const filled = form(kind);
    const fact = { kind, value: filled.value('value').trim() };
    const keep = () => filled.keep(id, fact, { say: 'books.kept' });
    return folded(t(`books.shelf.${kind}.do`), filled.draw('books.keep', keep), filled.begun);
  });
}

function opening({ id }, book) {
  const form = new Form(book, `opened ${id}`, [
    { name: 'value', word: 'books.day', kind: 'day', told: today() },
  ]);
  const fact = { kind: 'opened', value: form.value('value') };
  const keep = () => form.keep(id, fact, { say: 'books.kept' });
  return folded(t('books.shelf.open'), form.draw('books.keep', keep), form.begun);
}

/** The fields that describe a thing of that kind. */
function described(what, { name = '', signs = {} } = {}) {
  const sign = (of) => ({ name: of, word: `books.shelf.${of}`, told: named(signs, of) });
  const kind = {
    name: 'seal',
    word: 'books.shelf.seal',
    kind: /** @type {const} */ ('choice'),
    words: (what === 'ring' ? limits.rings : limits.washers) ?? [],
    family: 'seal.',
    told: named(signs, 'seal'),
  };
  const much = {
    name: 'value',
    word: what === 'oil' ? 'books.shelf.left' : 'books.shelf.left-count',
  };
  const of = {
    oil: [
      sign('grade'),
      sign('marks'),
      { ...sign('size'), word: 'books.shelf.bottle' },
      sign('for'),
    ],
    filter: [sign('number')],
    washer: [kind, sign('size')],
    ring: [kind, sign('size')],
  };
  return [{ name: 'text', word: 'books.shelf.name', told: name }, ...(named(of, what) || []), much];
}

const itemOf = (form, what) => ({
  kind: 'item',
  what,
  value: form.value('value').trim(),
  text: form.value('text').trim(),
  signs: form.values('grade', 'marks', 'size', 'for', 'number', 'seal'),
});

function change(item, book) {
  const { id, what } = item;
  const form = new Form(book, `item ${id}`, described(what, item));
  const keep = () => form.keep(id, itemOf(form, what), { say: 'books.kept' });
  const gone = () => book.tell(`gone ${id}`, id, { kind: 'gone' }, { say: 'books.gone.said' });
  return folded(
    t('books.shelf.change'),
    html`${form.draw('books.keep', keep)}
      <p class="entry">
        <button type="button" class="quiet" @click=${gone}>${t('books.gone')}</button>
      </p>`,
    form.begun,
  );
}

function newItem(book) {
  const kind = new Form(book, 'new', []);
  const what = String(book.drafts.get('new what') ?? 'oil');
  const choice = {
    name: 'what',
    word: 'books.shelf.what',
    kind: /** @type {const} */ ('choice'),
    words: limits.goods ?? [],
    family: 'goods.',
    told: 'oil',
  };
  kind.fields = [choice, ...described(what)];
  const keep = () => kind.keep(newId(), itemOf(kind, what), { say: 'books.kept' });
  return { form: kind, keep };
}
