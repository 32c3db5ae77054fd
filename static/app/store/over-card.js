import { call } from '../core/client.js';
import { settings } from './settings.js';

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
  const { ok, findings } = await call('lay-over', { card, figures });
  return ok ? { card: ok.card ?? card, findings: ok.findings ?? [] } : { card, findings };
}

/**
 * Where two versions of a card differ, for somebody who has the one and could have the other.
 *
 * @param {Card} from
 * @param {Card} to
 */
export async function changesOf(from, to) {
  if (JSON.stringify(from) === JSON.stringify(to)) return [];
  const { ok } = await call('card-changes', { from, to, system: settings.system });
  return ok?.changes ?? [];
}
