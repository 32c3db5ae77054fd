import { html, nothing } from 'lit-html';
import { said } from '../ui/said.js';
import { chooser } from './chooser.js';
import { address } from '../ui/address.js';
import { t, text } from '../words/catalogue.js';

/** Joining the bike with one that is the same and was entered twice, and parting them again. */
export function joinsOf(telling) {
  const { id, root, rows, found } = telling;
  if (root)
    return html`<p>${t('details.joined.into', { name: telling.nameOf(root) })}</p>
      <p>
        <a class="button quiet" href=${address('details', root)}>${text(telling.nameOf(root))}</a>
      </p>
      ${part(telling, id)} ${said('', found.get('join'))}`;
  const joined = rows.filter(({ into }) => into === id);
  return html`
    ${joined.map(
      (row) =>
        html`<p>${t('details.joined', { name: telling.nameOf(row.id) })}</p>
          ${part(telling, row.id)}`,
    )}
    ${form(telling)} ${said('', found.get('join'))}
  `;
}

function part(telling, id) {
  const undo = async () => {
    if (await telling.takeBack('join', 'joined', id)) telling.say(t('details.parted'));
  };
  return html`<p>
    <button type="button" class="quiet" @click=${undo}>${t('details.part')}</button>
  </p>`;
}

function form(telling) {
  const { chosen, others, id, lines, log } = telling;
  const { join = '' } = chosen;
  if (!others.length) return html`<p>${t('details.joins.none')}</p>`;
  const theirs = log.filter(({ bike }) => bike === join).length;
  const go = async () => {
    const told = { kind: 'joined', value: id };
    if (!(await telling.tell('join', told, { of: join }))) return;
    telling.choose({ join: '' });
    telling.say(t('details.joined.now'));
  };
  return html`<details class="more">
    <summary>${t('details.join')}</summary>
    <p>${t('details.join.how')}</p>
    ${chooser(telling, 'join', 'details.join.which')}
    ${
      join
        ? html`<p>
              ${t('details.join.jobs', { own: lines.length, name: telling.nameOf(join), count: theirs })}
              ${t('details.join.keeps', { name: telling.name })}
            </p>
            <button type="button" @click=${go}>${t('details.join.go')}</button>`
        : nothing
    }
  </details>`;
}
