import { inScopes } from './drafts.js';
import * as store from './store.js';

/**
 * Where the drafts of a manual's pages lie: beneath the key of a card, or of none yet.
 *
 * @param {string} [key]
 */
export const scopeOf = (key) => `${stem}${key ?? fresh}`;

const stem = 'manual ';
const fresh = 'new';

/**
 * The pages of manuals that wait to be decided, for the first screen, which asks no core:
 * of which card, as which bike, and how many.
 *
 * @returns {Promise<{ key?: string, name: string, count: number }[]>}
 */
export async function waitingPages() {
  const all = await inScopes(stem, 'state');
  const found = all.map(async ([scope, { pages = [], name = '' }]) => {
    const key = scope === scopeOf() ? undefined : scope.slice(stem.length);
    const leads = pages.length && (!key || (await store.card(key))); // a card may be gone
    return leads ? [{ key, name, count: pages.length }] : [];
  });
  return (await Promise.all(found)).flat();
}
