import { html, nothing } from 'lit-html';
import { changesOf } from '../store/over-card.js';
import { foldedChanges } from '../ui/changes-table.js';
import * as store from '../store/store.js';
import { t } from '../words/catalogue.js';

const most = 50; // groups drawn at once; further ones come as these are settled

/** The rows that share their card's id, in groups with what the first two say otherwise. */
export async function versions(rows) {
  const groups = new Map();
  for (const row of rows.filter(({ twin }) => twin)) {
    const { id } = row.bike;
    groups.set(id, [...(groups.get(id) ?? []), row]);
  }
  return Promise.all(
    [...groups.values()]
      .slice(0, most)
      .map(async (group) => ({ group, unlike: await unlike(group) })),
  );
}

async function unlike(group) {
  const read = ({ key }) => store.card(key).catch(() => undefined);
  const [one, other] = await Promise.all(group.slice(0, 2).map(read));
  return one && other ? changesOf(one.card, other.card) : [];
}

/** The groups, each until one of its cards is left. */
export const drawVersions = (list, marks) =>
  list.length
    ? html`<section>
        <h2>${t('cards.versions')}</h2>
        <p>${t('cards.versions.how')}</p>
        ${list.map(
          ({ group, unlike: found }) =>
            html`<article>
              <ul class="bikes cards">
                ${group.map((row) => marks.draw(row))}
              </ul>
              ${foldedChanges(found, ['differs.one', 'differs.other'])}
            </article>`,
        )}
      </section>`
    : nothing;
