// The text of a bike that was read from codes, on its way from the screen that reads them to
// the one that restores backups. It is kept nowhere else, so a page that is loaded again has none.
let handed = '';

/** @param {string} text */
export function handOver(text) {
  handed = text;
}

/** The text, once; '' when there is none. */
export function takeHanded() {
  const text = handed;
  handed = '';
  return text;
}
