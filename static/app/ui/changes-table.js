import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';
import { standing } from './figure.js';
import { short } from './lists.js';

/** @import { Change, ShownFigure } from '../core/core.d.ts' */

const most = 40; // are drawn; the others are counted

/**
 * Where two cards differ, as the core tells it (`card-changes`), a line for each thing;
 * `labels` are words for the two of them. The words are those of the part "changes".
 *
 * @param {Change[]} changes
 * @param {[string, string]} [labels]
 */
export const changesTable = (changes, labels = ['differs.was', 'differs.now']) =>
  html`<dl class="differs">${changes.slice(0, most).map((change) => line(change, labels))}</dl>
    ${changes.length > most ? html`<p>${t('differs.more', { count: changes.length - most })}</p>` : nothing}`;

/**
 * @param {Change} change
 * @param {[string, string]} labels
 */
const line = ({ part, place, word, before, after }, [one, other]) =>
  html`<div class="figure">
    <dt>${nameOf(part, place, word)}</dt>
    ${before || after ? html`${said(one, before)} ${said(other, after)}` : nothing}
  </div>`;

/**
 * @param {string | undefined} part
 * @param {string | undefined} place
 * @param {string} word
 */
function nameOf(part, place, word) {
  const what = `@${word}`;
  if (part && place) return t('differs.at', { part: `@${part}`, place: short(place), what });
  return part ? t('differs.in', { part: `@${part}`, what }) : t(word);
}

/**
 * @param {string} label
 * @param {ShownFigure} [figure]
 */
const said = (label, figure) =>
  html`<dd>
    <small>${t(label)}</small>
    ${figure?.texts?.length ? figure.texts.map(short).join(' · ') : t('differs.nothing')}
    ${figure?.standing && figure.standing !== 'unknown' ? standing(figure) : nothing}
  </dd>`;

/**
 * The table behind a line that opens it.
 *
 * @param {Change[]} changes
 * @param {[string, string]} [labels]
 */
export const foldedChanges = (changes, labels) =>
  changes.length
    ? html`<details>
        <summary>${t('differs.what', { count: changes.length })}</summary>
        ${changesTable(changes, labels)}
      </details>`
    : nothing;
