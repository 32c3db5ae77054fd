import { use } from './database.js';

/** @import { CardRecord } from './records.d.ts' */

const together = 500; // read at once

/** All own cards, read in parts: none takes longer than the store may. */
export async function allCards() {
  /** @type {CardRecord[]} */
  const all = [];
  for (;;) {
    const last = all.at(-1);
    const range = last ? IDBKeyRange.lowerBound(last.key, true) : null;
    const chunk = await use((db) => db.getAll('cards', range, together));
    all.push(...chunk);
    if (chunk.length < together) return all;
  }
}
