import { html, nothing } from 'lit-html';
import { said } from '../ui/said.js';
import { address } from '../ui/address.js';
import { t } from '../words/catalogue.js';
import { dayText } from '../words/dates.js';
import { folded } from './form.js';

/**
 * What is written of a subject, the newest first; each entry can be taken back.
 *
 * @param {import('./book.js').Book} book
 * @param {string} of
 * @param {{ id: string, day: string, job?: string, again?: boolean }[]} list
 * @param {(entry: any) => unknown} say
 */
export function entries(book, of, list, say) {
  if (!list.length) return nothing;
  const about = `entries ${of}`;
  return folded(
    t('books.entries', { count: list.length }),
    html`<ul class="book-entries">
        ${[...list].reverse().map((entry) => line(book, of, about, entry, say))}
      </ul>
      ${said('', book.found.get(about))}`,
    Boolean(book.found.get(about)?.length),
  );
}

const line = (book, of, about, entry, say) =>
  html`<li>
    <span>
      <strong>${dayText(entry.day)}</strong> ${say(entry)}
      ${entry.again ? html`<small>${t('books.again')}</small>` : nothing}
      ${entry.job ? html`<a href=${address('record', entry.job)}>${t('books.job')}</a>` : nothing}
    </span>
    <button
      type="button"
      class="quiet"
      aria-label=${t('books.undo.of', { date: dayText(entry.day) })}
      @click=${() => book.undo(about, of, entry.id)}
    >
      ${t('books.undo')}
    </button>
  </li>`;
