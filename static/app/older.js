// Tells a browser that is too old so, in place of a page that fails: what is asked for
// here came in the same versions as the rest that the page can't do without. It runs in
// every browser, so it is written as they all read it.
if (!('hasOwn' in Object && 'findLast' in Array.prototype && 'structuredClone' in window)) {
  /** @type {any} */ (document.getElementById('older')).hidden = false;
  /** @type {any} */ (document.getElementById('app')).hidden = true;
}
