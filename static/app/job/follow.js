import { watchJob } from '../store/windows.js';

/**
 * Shows what other windows add to the job that is on the screen. The step that is
 * shown stays, also when it is no longer the next one. Returns what ends it.
 */
export function follow(job, control, app) {
  return watchJob(job.record.id, async () => {
    const shown = control.stepId ?? job.state.next;
    if (!(await app.attempt(() => job.refresh()))) return;
    if (!control.view && shown) control.stepId ??= shown;
    app.redraw();
  });
}
