/**
 * The cards of first aid: for each what to do, line by line in that order
 * (`aid.KIND.LINE`). What not to do, whom to call and the source follow on each.
 */
export const kinds = {
  burn: ['cool', 'strip', 'cover', 'warm'],
  eye: ['rinse', 'lids', 'lenses'],
  swallowed: ['ask', 'label', 'mouth'],
  cut: ['press', 'more', 'wash'],
  injected: ['hospital', 'label', 'rest'],
};
