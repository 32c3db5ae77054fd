import { call } from '../core/client.js';

/** @import { Card, Finding, Own } from '../core/core.d.ts' */

/**
 * A card with the figures of a bike's own over it, and what of them doesn't fit it.
 *
 * @param {Card} card
 * @param {Own[]} [figures]
 * @returns {Promise<{ card: Card, findings: Finding[] }>}
 */
export async function laidOver(card, figures = []) {
  if (!figures.length) return { card, findings: [] };
  /** @type {any} */
  const answer = await call(/** @type {any} */ ('lay-over'), { card, figures });
  if (!answer.ok) return { card, findings: answer.findings ?? [] };
  return { card: answer.ok.card ?? card, findings: answer.ok.findings ?? [] };
}

/**
 * Where two versions of a card differ, for somebody who has the one and could have the other.
 *
 * @param {Card} from
 * @param {Card} to
 * @returns {Promise<any[]>}
 */
export async function changesOf(from, to) {
  if (JSON.stringify(from) === JSON.stringify(to)) return [];
  /** @type {any} */
  const answer = await call(/** @type {any} */ ('card-changes'), { from, to });
  return answer.ok?.changes ?? [];
}
