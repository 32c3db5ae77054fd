import { call } from '../core/client.js';
import * as store from '../store/store.js';

/** How much of the log's lines is in no backup, and whether to remind of it: {count, remind}. */
export async function unsaved(lines) {
  const [backup, later] = await Promise.all(['backup', 'backupLater'].map(store.setting));
  const { ok } = await call('unsaved', {
    finished: lines.map(({ summary }) => summary.finished).filter(Boolean),
    backup: backup?.time,
    later: later?.time,
    now: new Date().toISOString(),
  });
  return ok ?? {};
}
