/** The line of a job's record in the log: {id, bike, name, started, summary}. */
export const lineOf = ({ id, card, name, started, summary = {} }) => ({
  id,
  bike: card?.id ?? '',
  name,
  started,
  summary,
});
