import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { above, at } from './pointer.js';
import { isFigure, isWords, textOf } from './sections.js';
import { t } from '../words/catalogue.js';
import { draftMark } from '../ui/draft-mark.js';
import { control } from '../ui/field.js';
import { finding } from '../ui/findings.js';
import { own } from '../site/own.js';

/** @import { CardFigure } from '../core/core.d.ts' */

const standings = ['manual', 'measured', 'decided', 'estimated'];

/** One entry of a card: what stands there, its page in the manual, what is odd about it. */
export function entryField(draft, entry, changed) {
  const unread = draft.unread.get(entry.at);
  const value = at(draft.card, entry.at);
  const stated = entry.stated ? at(draft.card, above(entry.at)) : value;
  const about = draft.found.filter(({ where }) => where === entry.at || within(entry, where));
  const write = (text, more = pick(stated)) => draft.write(entry, text, more);
  const kind = entry.kind === 'choice' || entry.kind === 'yes' ? entry.kind : 'text';
  const text = unread?.text ?? textOf(draft.card, entry);
  const echo = draft.echo.get(entry.at);
  const entering = typing(draft, entry.at, echo?.text ?? text, changed, (typed) =>
    write(typed === true ? 'yes' : typed || ''),
  );
  return html`<div class="field">
    ${control(
      { name: entry.at, kind, words: entry.words, family: entry.family, ...room(entry.kind) },
      {
        id: `entry${entry.at.replaceAll('/', '-')}`,
        ...entering,
        label: t(entry.word),
        names: entry.names,
        none: entry.none,
        hint: nothing,
      },
    )}
    ${(isFigure(entry) || entry.stated) && text ? origin(draft, entry, stated ?? {}, about, changed, (more) => write(text, more)) : nothing}
    ${unentered(draft, entry.at, changed, entering)}
    ${echo && echo.text !== text ? html`<p class="kept">${t('edit.read-as', { text })}</p>` : nothing}
    ${[...(unread?.findings ?? []), ...(echo?.notes ?? []), ...about].map((f) => finding(named(entry, f)))}
  </div>`;
}

/** A finding beside an entry, which names that by its label. */
const named = ({ at: pointer, word }, found) =>
  found.values?.name && found.values.name === pointer.split('/').at(-1)
    ? { ...found, values: { ...found.values, name: `@${word}` } }
    : found;

/** How much may be typed at an entry of that kind. */
const room = (kind) =>
  kind === 'lines' || kind === 'remark'
    ? { lines: true, letters: limits.remark }
    : { letters: limits.entry };

/** A figure's page; and, opened, that it is not from the manual, or odd and kept. */
function origin(draft, entry, figure, found, changed, write) {
  const id = `origin${entry.at.replaceAll('/', '-')}`;
  const now = pick(figure);
  const doubted = found.some(({ grade }) => grade === 'doubt');
  const field = (name, word) => {
    const pointer = `${entry.at}/${name}`;
    const entering = typing(draft, pointer, own(now, name), changed, (text) =>
      write({ ...now, [name]: text || undefined }),
    );
    return html`${control(
      { name: pointer, kind: 'text', ...room('text') },
      { id: `${id}-${name}`, ...entering, label: t(word), hint: nothing },
    )}
    ${unentered(draft, pointer, changed, entering)}`;
  };
  const standing = control(
    { name: `${entry.at}/standing`, kind: 'choice', words: standings, family: 'standing.' },
    {
      id: `${id}-standing`,
      ...typing(draft, `${entry.at}/standing`, now.standing, changed, (word) =>
        write({ ...now, standing: word || 'manual' }),
      ),
      label: t('edit.standing'),
    },
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

/** @param {Partial<CardFigure>} figure */
const pick = ({ standing = 'manual', page, method, kept } = {}) => ({
  standing,
  page,
  method,
  kept,
});

/** A finding about a part of the entry, such as its value; not about another entry in it. */
const within = (entry, where) =>
  where.startsWith(`${entry.at}/`) && (isFigure(entry) || isWords(entry));
