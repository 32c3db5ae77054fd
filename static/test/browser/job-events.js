// Events of a job that was done as far as somewhere.

/** The events by which each step of a job before that one is done, but for those left out. */
export const eventsTo = ({ steps, started }, before, ...leftOut) =>
  steps
    .slice(0, steps.indexOf(before))
    .filter((id) => !leftOut.includes(id))
    .map((step, i) => ({
      id: `to-${step}`,
      seq: i + 1,
      time: new Date(Date.parse(started) + 1000 * i).toISOString(),
      kind: 'done',
      step,
    }));
