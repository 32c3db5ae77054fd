import { html, nothing } from 'lit-html';
import { call } from '../core/client.js';
import { Machine } from '../plan/machine.js';
import { settings } from '../store/settings.js';
import { address } from '../ui/address.js';
import { figureRow } from '../ui/figure.js';
import { findings } from '../ui/findings.js';
import { loadWordsOf, t, text } from '../words/catalogue.js';
import { nameOf } from './told.js';

/** @import { Answer, AskedAnswer, Reply, Thing } from '../core/core.d.ts' */

/**
 * What is asked of one bike, and what its plan says.
 *
 * @typedef {{ row: any, at: string[], answer: Answer<AskedAnswer> }} Asked
 */

/**
 * Answers what is asked of bikes, each with its own figures over its card.
 *
 * @param {any[]} rows
 * @param {Thing[]} things
 * @returns {Promise<Asked[]>}
 */
export async function answersTo(rows, things) {
  if (things.includes('level')) await loadWordsOf('faults');
  const asked = rows.map(async (row) => {
    const at = row.at ?? [row.key];
    const machine = await Machine.open(at[0], at[1] === 'card', () => {});
    await machine.told;
    const { card } = machine;
    if (!card) return [];
    const answer = await call('asked', { card, things, bench: { system: settings.system } });
    return [{ row, at, answer }];
  });
  return (await Promise.all(asked)).flat();
}

/**
 * The answers, above the list.
 *
 * @param {Asked[]} list
 */
export const answers = (list) =>
  list.map(
    ({ row, at, answer }) =>
      html`<article class="sheet asked">
        <h2><a href=${address('bike', ...at)}>${nameOf(row)}</a></h2>
        ${answer.ok ? answer.ok.answers?.map(reply) : findings(answer.findings ?? [])}
      </article>`,
  );

/** @param {Reply} reply */
function reply({ of, place, count = 0, figures = [], tool = [], thread, lines = [], lacks }) {
  const where = [place && text(place), count > 1 && t('plan.count', { count })].filter(Boolean);
  return html`<h3>${t(of)}</h3>
    ${where.length ? html`<p class="kept">${where.join(' · ')}</p>` : nothing}
    ${lacks ? html`<p>${t('none-on-card')}</p>` : nothing}
    ${lines.map(({ word, values }) => html`<p>${t(word, values)}</p>`)}
    <dl>
      ${figures.map(figureRow)} ${row('plan.tool', tool.map((part) => text(part)).join(', '))}
      ${row('plan.thread', thread && text(thread))}
    </dl>`;
}

const row = (/** @type {string} */ word, /** @type {string | undefined} */ content) =>
  content
    ? html`<div class="figure">
        <dt>${t(word)}</dt>
        <dd>${content}</dd>
      </div>`
    : nothing;
