// Which step the field of a draft belongs to, by the name of the field.

/** The name of the field of a problem that is being judged at a step. */
const problem = 'problem-';

/** Fields that are a step's only one of their kind, and those that may be several. */
const single = /^(note|look|tally)-(.+)$/;
const several = /^(ask|level)-(.+)$/;

/**
 * The id of the step at which something is typed; undefined for none of the plan.
 *
 * @param {string} field
 * @param {any} value
 * @param {{ id: string }[]} steps
 */
function stepOf(field, value, steps) {
  if (field.startsWith(problem)) return value?.step;
  const one = field.match(single)?.[2];
  if (one) return one;
  const rest = field.match(several)?.[2] ?? '';
  const fits = steps.filter(({ id }) => rest.startsWith(`${id}-`));
  return fits.sort((a, b) => b.id.length - a.id.length)[0]?.id; // "pour" and "pour-engine"
}

/**
 * The ids of the steps at which something stands in a field that is not entered.
 *
 * @param {[field: string, value: any][]} drafts
 * @param {{ id: string }[]} steps
 */
export const unentered = (drafts, steps) =>
  new Set(drafts.map(([field, value]) => stepOf(field, value, steps)).filter(Boolean));
