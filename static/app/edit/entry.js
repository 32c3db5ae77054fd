import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { at } from './pointer.js';
import { isFigure, isWords, textOf } from './sections.js';
import { t } from '../words/catalogue.js';
import { draftMark } from '../ui/draft-mark.js';
import { control } from '../ui/field.js';
import { said } from '../ui/said.js';
import { own } from '../site/own.js';

const standings = ['manual', 'measured', 'decided', 'estimated'];

/** One entry of a card: what stands there, its page in the manual, what is odd about it. */
export function entryField(draft, entry, changed) {
  const unread = draft.unread.get(entry.at);
  const about = draft.found.filter(({ where }) => where === entry.at || within(entry, where));
  const kind = entry.kind === 'choice' || entry.kind === 'yes' ? entry.kind : 'text';
  const text = unread?.text ?? textOf(draft.card, entry);
  const echo = draft.echo.get(entry.at);
  const entering = typing(draft, entry.at, echo?.text ?? text, changed, (typed) =>
    draft.write(entry, typed === true ? 'yes' : typed || ''),
  );
  const id = idOf('entry', draft, entry.at);
  const all = [...(unread?.findings ?? []), ...(echo?.notes ?? []), ...about];
  const found = all.map((one) => named(entry, one));
  const stated = (isFigure(entry) || entry.stated) && text;
  return html`<div
    class="field"
    role=${stated ? 'group' : nothing}
    aria-label=${stated ? t(entry.word) : nothing}
  >
    ${control(
      { name: entry.at, kind, words: entry.words, family: entry.family, ...room(entry.kind) },
      {
        id,
        found,
        ...entering,
        label: t(entry.word),
        names: entry.names,
        none: entry.none,
        hint: nothing,
      },
    )}
    ${stated ? origin(draft, entry, about, changed) : nothing} ${quoted(draft, entry)}
    ${unentered(draft, entry.at, changed, entering)}
    ${echo && echo.text !== text ? html`<p class="kept">${t('edit.read-as', { text })}</p>` : nothing}
    ${said(id, found, Boolean(unread ?? echo))}
  </div>`;
}

/** The id of a field or part, by the part that it is of: one that moves up in its list keeps it. */
export function idOf(stem, { card }, pointer) {
  const [, list, n, ...rest] = pointer.split('/');
  return [stem, list, at(card, `/${list}/${n}/id`) ?? n, ...rest].filter(Boolean).join('-');
}

/** A finding beside an entry, which names that by its label. */
const named = ({ at: pointer, word }, found) =>
  found.values?.name && found.values.name === pointer.split('/').at(-1)
    ? { ...found, values: { ...found.values, name: `@${word}` } }
    : found;

/** The words of the manual that an entry comes from. */
const quoted = (draft, entry) =>
  draft.quotes
    .filter((quote) => quote.at === entry.at)
    .map(
      ({ words, title, page }) =>
        html`<p class="quoted">
          <q dir="auto">${words}</q>
          <small
            >${t(page ? 'standing.manual.from' : 'standing.manual.title', { source: title, page })}</small
          >
        </p>`,
    );

/** How much may be typed at an entry of that kind. */
const room = (kind) =>
  kind === 'lines' || kind === 'remark'
    ? { lines: true, letters: limits.remark }
    : { letters: limits.entry };

/** A figure's page; and, opened, that it is not from the manual, or odd and kept. */
function origin(draft, entry, found, changed) {
  const now = draft.originOf(entry);
  const doubted = found.some(({ grade }) => grade === 'doubt');
  const member = (name, field, word, said = (text) => text || undefined) => {
    const pointer = `${entry.at}/${name}`;
    const entering = typing(draft, pointer, own(now, name), changed, (text) =>
      draft.say(entry, { [name]: said(text) }),
    );
    return html`${control(
      { name: pointer, ...field },
      { id: idOf('origin', draft, pointer), ...entering, label: t(word), hint: nothing },
    )}
    ${unentered(draft, pointer, changed, entering)}`;
  };
  const field = (name, word) => member(name, { kind: 'text', ...room('text') }, word);
  const standing = member(
    'standing',
    { kind: 'choice', words: standings, family: 'standing.' },
    'edit.standing',
    (word) => word || 'manual',
  );
  return html`<div class="origin">
    ${field('page', 'edit.page')}
    <details ?open=${now.standing !== 'manual' || Boolean(now.kept) || doubted}>
      <summary>${t('edit.other')}</summary>
      ${standing} ${now.standing === 'manual' ? nothing : field('method', 'edit.method')}
      ${field('kept', 'edit.kept')}
    </details>
  </div>`;
}

/**
 * What stands in a field, and what is done with it. What is under the fingers, or
 * just being taken in, stays there while the screen is drawn anew.
 */
const typing = (draft, pointer, value, changed, write) => ({
  value: draft.typed.get(pointer) ?? value,
  type: (text) => {
    const before = draft.standing(pointer);
    draft.type(pointer, text);
    if (before !== draft.standing(pointer)) changed();
  },
  set: async (text) => {
    const entered = draft.enter(pointer, text, write);
    changed();
    await entered;
    changed();
  },
});

/**
 * Says that something is typed and not in the card; what was typed before the page was
 * left is entered or dropped by a tap.
 */
function unentered(draft, pointer, changed, { set }) {
  const text = draft.typed.get(pointer);
  const drop = () => {
    draft.forget(pointer);
    changed();
  };
  const taps = html`<span class="entry">
    ${
      text === undefined
        ? nothing
        : html`<button type="button" class="quiet" @click=${() => set(text)}>
            ${t('draft.enter')}
          </button>`
    }
    <button type="button" class="quiet" @click=${drop}>${t('draft.drop')}</button>
  </span>`;
  return draftMark(draft.standing(pointer), taps);
}

/** A finding about a part of the entry, such as its value; not about another entry in it. */
const within = (entry, where) =>
  where.startsWith(`${entry.at}/`) && (isFigure(entry) || isWords(entry));
