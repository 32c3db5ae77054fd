// What is under the fingers stays there, whatever is drawn meanwhile: an answer of the core
// or of the store comes when it comes, and may come between two letters. A field that has
// the focus keeps it, also where another element takes its place, and what was typed since
// it was entered last is never written over.

/** @type {any} the field in which something is typed that was not entered yet */
let fresh;
/** @type {Element | null} the field that a finger came down on, until it has the focus */
let aimed = null;
/** Fields given back what was typed: no browser says of them that they changed. */
const owed = new WeakSet();

const fields = new Set(['INPUT', 'TEXTAREA', 'SELECT']);

/**
 * Reports whether something is typed or chosen in it.
 *
 * @type {(element: any) => boolean}
 */
export const isField = (element) => fields.has(element?.tagName);

/** @type {(event: string, see: (target: any, event: Event) => void) => void} */
const on = (event, see) =>
  globalThis.document?.addEventListener?.(event, (e) => see(e.target, e), true);

on('input', (field) => (fresh = field));
on('change', (field) => {
  fresh = undefined; // it is entered now, and whoever takes it in may write it anew
  owed.delete(field);
});
on('mousedown', (target) => (aimed = isField(target) ? target : null));
on('click', () => (aimed = null));
on('focusout', (field) => {
  if (owed.delete(field)) field.dispatchEvent(new Event('change', { bubbles: true }));
});

/**
 * Draws, and gives back what is under the fingers.
 *
 * @param {() => void} draw
 */
export function underFingers(draw) {
  const field = /** @type {any} */ (document.activeElement);
  const typed = field === fresh;
  const { id, value, selectionStart: from, selectionEnd: to } = field ?? {};
  const target = aimed;
  draw();
  if (target && !target.isConnected) anew(target.id)?.focus({ preventScroll: true });
  else if (id && isField(field)) giveBack({ field, id, value, typed, from, to });
}

/** @type {(id: string) => HTMLElement | null} what is drawn for it, unfolded */
function anew(id) {
  const now = id ? document.getElementById(id) : null;
  for (let fold = now?.closest('details'); fold; fold = fold.parentElement?.closest('details'))
    fold.open = true;
  return now;
}

/** @param {{ field: any, id: string, value: string, typed: boolean, from: number | null, to: number | null }} held */
function giveBack({ field, id, value, typed, from, to }) {
  const now = /** @type {any} */ (anew(id));
  if (!now) return; // it is no longer asked for
  const moved = now !== document.activeElement;
  if (moved) now.focus({ preventScroll: true });
  const lost = typed && now.value !== value;
  if (lost) {
    now.value = value;
    owed.add(now);
  }
  if (typed) fresh = now;
  if (typed && now !== field) owed.add(now);
  if ((moved || lost) && typeof from === 'number') now.setSelectionRange(from, to);
}
