import { address } from '../ui/address.js';

/** The address of a problem, or with no id of their list, with what goes with it. */
export const troubleAt = (id, state) =>
  address('trouble', ...[id, JSON.stringify(state)].filter((piece) => piece && piece !== '{}'));
