// Where the large button and its neighbours lead, for a finger and for a voice.

/** On from a step: done if it was not, and to the next one. */
export const onward = (control, step) =>
  control.job.isDone(step.id) ? control.forward(step) : control.done(step);

/** The step before this one, or undefined. */
export const stepBefore = ({ plan: { steps } }, step) => steps[steps.indexOf(step) - 1];

/** The id of the next step after this one that is not done, or of the next open one. */
export function nextAfter(job, step) {
  const { steps } = job.plan;
  const { toDo = [], next } = job.state;
  const at = steps.findIndex(({ id }) => id === step.id);
  return steps.slice(at + 1).find(({ id }) => toDo.includes(id))?.id ?? next;
}
