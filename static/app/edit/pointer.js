// Places in a card by JSON pointer (RFC 6901); ids and names there need no escapes.

import { own, setOwn } from '../site/own.js';

/** What stands at a place, or undefined. */
export const at = (card, pointer) => steps(pointer).reduce((value, step) => own(value, step), card);

/** "/bolts/0/seal" of "/bolts/0/seal/kind". */
export const above = (pointer) => pointer.slice(0, pointer.lastIndexOf('/'));

/** Puts a value at a place, and undefined to take it away. */
export function put(card, pointer, value) {
  const path = steps(pointer);
  const last = path.pop();
  let parent = card;
  for (const [n, step] of path.entries())
    parent = own(parent, step) ?? begin(parent, step, path[n + 1] ?? last);
  if (value === undefined) delete parent[last];
  else setOwn(parent, last, value);
}

/** Makes room for what stands at the next step: a list where that is a number. */
function begin(parent, step, next) {
  setOwn(parent, step, /^\d+$/.test(next) ? [] : {});
  return own(parent, step);
}

const steps = (pointer) => pointer.split('/').slice(1);
