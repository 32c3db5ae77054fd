// Places in a card by JSON pointer (RFC 6901); ids and names there need no escapes.

/** What stands at a place, or undefined. */
export const at = (card, pointer) => steps(pointer).reduce((value, step) => value?.[step], card);

/** Puts a value at a place, and undefined to take it away. */
export function put(card, pointer, value) {
  const path = steps(pointer);
  const last = path.pop();
  let parent = card;
  for (const [n, step] of path.entries())
    parent = parent[step] ??= /^\d+$/.test(path[n + 1] ?? last) ? [] : {};
  if (value === undefined) delete parent[last];
  else parent[last] = value;
}

const steps = (pointer) => pointer.split('/').slice(1);
