import { call } from '../core/client.js';
import * as store from '../store/store.js';
import { saved } from '../store/whole.js';

/** @import { Summary, UnsavedAnswer } from '../core/core.d.ts' */

/**
 * How many of the log's jobs are in no file that this phone handed out, and whether to
 * remind of it; nothing where the store or the core can't say.
 *
 * @param {{ id: string, summary: Partial<Summary> }[]} lines
 * @returns {Promise<UnsavedAnswer>}
 */
export async function unsaved(lines) {
  try {
    const [backup, later] = await Promise.all(['backup', 'backupLater'].map(store.setting));
    const inFile = await saved();
    const { ok } = await call('unsaved', {
      jobs: lines.map(({ id, summary: { finished, events } }) => {
        const kept = inFile.get(id);
        // A line of an earlier version doesn't say how many; nothing was added since then.
        const all = Math.max(events ?? kept ?? 1, 1);
        return { finished, events: all, ...(kept !== undefined && { saved: Math.max(kept, 1) }) };
      }),
      backup: backup?.time,
      later: later?.time,
      now: new Date().toISOString(),
    });
    return ok ?? {};
  } catch {
    return {};
  }
}
