// Tells a browser that is too old so, in place of a page that fails: what is asked for
// here came in the same versions as the rest that the page can't do without. It runs in
// every browser, so it is written as they all read it. Where the server computes pages
// for such a browser, which a mere host of files doesn't, it leads to them.
if (!('hasOwn' in Object && 'findLast' in Array.prototype && 'structuredClone' in window)) {
  var older = /** @type {any} */ (document.getElementById('older'));
  older.hidden = false;
  /** @type {any} */ (document.getElementById('app')).hidden = true;
  var ask = new XMLHttpRequest();
  ask.onload = function () {
    if (ask.status !== 204) return;
    older.appendChild(document.createElement('br'));
    older.appendChild(document.querySelector('#none a'));
  };
  ask.open('GET', '/plain/here');
  ask.send();
}
