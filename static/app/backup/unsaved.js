import { call } from '../core/client.js';
import * as store from '../store/store.js';

/** @import { Summary, UnsavedAnswer } from '../core/core.d.ts' */

/**
 * How much of the log's lines is in no backup, and whether to remind of it; nothing
 * where the store or the core can't say.
 *
 * @param {{ summary: Summary }[]} lines
 * @returns {Promise<UnsavedAnswer>}
 */
export async function unsaved(lines) {
  try {
    const [backup, later] = await Promise.all(['backup', 'backupLater'].map(store.setting));
    const { ok } = await call('unsaved', {
      jobs: lines.map(({ summary: { finished } }) => ({
        finished,
        events: 1,
        saved: finished && finished <= (backup?.time ?? '') ? 1 : 0,
      })),
      backup: backup?.time,
      later: later?.time,
      now: new Date().toISOString(),
    });
    return ok ?? {};
  } catch {
    return {};
  }
}
