import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';
import { sentenceOf } from './named.js';

/** @import { Unread } from './tally.js' */

/**
 * The first of what can't be read, a sentence each, and how many there are beside.
 *
 * @param {Unread[]} list
 * @param {number} count of all
 */
export const unreadList = (list, count) =>
  html`<ul class="unread">
      ${list.map((unread) => html`<li>${sentenceOf(unread)}</li>`)}
    </ul>
    ${count > list.length ? html`<p>${t('unread.more', { count: count - list.length })}</p>` : nothing}`;
