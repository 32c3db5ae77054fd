import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { factsOf } from '../store/facts.js';
import { settings } from '../store/settings.js';
import { address } from '../ui/address.js';
import { finding } from '../ui/findings.js';
import { loadWordsOf, t, verbatim } from '../words/catalogue.js';
import { dayText, today } from '../words/dates.js';

/**
 * What marks a job: the torque wrenches that it was done with and that were found wrong.
 * Resolves to what draws it; to nothing for who keeps no books.
 *
 * @param {string} job
 */
export async function marksOf(job) {
  if (!settings.books) return nothing;
  const facts = await factsOf('wrench');
  if (!facts.length) return nothing;
  const { system } = settings;
  const { ok } = await call('wrenches', { facts, system, today: today() });
  const marks = (ok?.wrenches ?? []).flatMap(({ name = '', doubted = [] }) =>
    doubted.filter((mark) => mark.job === job).map((mark) => ({ ...mark, name })),
  );
  if (!marks.length) return nothing;
  await loadWordsOf('books');
  return html`${marks.map(({ name, found = '' }) =>
      finding({
        code: 'wrench-wrong',
        grade: 'doubt',
        values: { name: verbatim(name), day: dayText(found) },
      }),
    )}
    <p><a href=${address('books', 'wrenches')}>${t('books.wrenches')}</a></p>`;
}
