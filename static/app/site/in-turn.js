/**
 * What is done one after the other: an act given to it begins when those before it are
 * over, however they ended, and resolves as it does.
 *
 * @returns {<T>(act: () => T | Promise<T>) => Promise<T>}
 */
export function inTurn() {
  /** @type {Promise<unknown>} */
  let last = Promise.resolve();
  return (act) => {
    const done = last.then(act);
    last = done.catch(() => {});
    return done;
  };
}
