// What a person types once for all bills: the setting "bill" of this phone,
// {…usual, cost: {what a price is remembered by: price}, labour}.

import { own } from '../site/own.js';

const usual = ['seller', 'currency', 'prices', 'tax', 'rounding', 'cash'];

/** What a new bill begins with. */
export const beginning = (kept) => pick(kept, usual);

/** What is known of a new line: its price, and how long the work takes. */
export const known = ({ cost = {}, labour }, kind, of) => ({
  price: own(cost, of),
  ...(kind === 'labour' && labour ? { count: labour } : {}),
});

/** What is to be remembered once a bill was kept. */
export function learnt(kept, typed) {
  const { lines = [] } = typed;
  const priced = lines.filter(({ of, price }) => of && price).map(({ of, price }) => [of, price]);
  const labour = lines.find(({ kind, count }) => kind === 'labour' && count)?.count;
  const cost = { ...kept.cost, ...Object.fromEntries(priced) };
  return filled({ ...kept, ...pick(typed, usual), cost, labour: labour ?? kept.labour });
}

const pick = (from, names) =>
  filled(Object.fromEntries(names.map((name) => [name, own(from, name)])));

/** A record without what is empty: an empty text is none. */
export const filled = (record) =>
  Object.fromEntries(
    Object.entries(record).filter(([, value]) => value !== undefined && value !== ''),
  );
