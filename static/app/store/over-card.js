import { call } from '../core/client.js';
import { loadWordsOf } from '../words/catalogue.js';
import { settings } from './settings.js';

/** @import { Card, Change, Finding, Own, OwnPlace } from '../core/core.d.ts' */

/**
 * A card with the figures of a bike's own over it, what of them doesn't fit it, and which
 * it may have.
 *
 * @param {Card} card
 * @param {Own[]} [figures]
 * @returns {Promise<{ card: Card, places: OwnPlace[], findings: Finding[] }>}
 */
export async function withOwn(card, figures = []) {
  const { ok, findings = [] } = await call('lay-over', { card, figures });
  if (!ok) return { card, places: [], findings };
  return { card: ok.card ?? card, places: ok.places ?? [], findings: ok.findings ?? [] };
}

/**
 * The same for who needs the card alone: one without figures of its own asks no core.
 *
 * @param {Card} card
 * @param {Own[]} [figures]
 * @returns {Promise<{ card: Card, findings: Finding[] }>}
 */
export const laidOver = async (card, figures = []) =>
  figures.length ? withOwn(card, figures) : { card, findings: [] };

/**
 * Where two versions of a card differ, with the words that say so (`ui/changes-table.js`);
 * `findings` say why one of them can't be read.
 *
 * @param {Card} from
 * @param {Card} to
 * @returns {Promise<{ changes: Change[], findings: Finding[] }>}
 */
export async function compared(from, to) {
  if (JSON.stringify(from) === JSON.stringify(to)) return { changes: [], findings: [] };
  const asked = call('card-changes', { from, to, system: settings.system });
  const [{ ok, findings = [] }] = await Promise.all([
    asked,
    loadWordsOf('changes').catch(() => {}),
  ]);
  return { changes: ok?.changes ?? [], findings };
}

/**
 * Where they differ, for somebody who has the one and could have the other.
 *
 * @param {Card} from
 * @param {Card} to
 */
export const changesOf = async (from, to) => (await compared(from, to)).changes;
