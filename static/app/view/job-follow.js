import { watchJob } from '../tabs.js';

/**
 * Shows what other windows add to the job that is on the screen. The step that is
 * shown stays, also when it is no longer the next one. Returns what ends it.
 */
export function follow(work, control, app) {
  return watchJob(work.record.id, async () => {
    const shown = control.stepId ?? work.state.next;
    if (!(await app.keep(() => work.refresh()))) return;
    if (!control.view && shown) control.stepId ??= shown;
    app.redraw();
  });
}
