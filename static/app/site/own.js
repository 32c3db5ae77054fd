// Names come from outside: from addresses, files, records and settings. Every object
// answers to "constructor" and "toString", whatever was put in it; these two know only
// what was.

/**
 * What an object holds under a name; undefined for what was not put there.
 *
 * @template {object} T
 * @param {T | null | undefined} object
 * @param {PropertyKey | null | undefined} name
 * @returns {T[keyof T] | undefined}
 */
export const own = (object, name) =>
  // eslint-disable-next-line tidysump/own-lookup
  object && Object.hasOwn(object, name ?? '') ? /** @type {any} */ (object)[name ?? ''] : undefined;

/**
 * Puts a value under a name, also under one that means something to every object.
 *
 * @param {object} object
 * @param {PropertyKey} name
 * @param {unknown} value
 */
export const setOwn = (object, name, value) =>
  Object.defineProperty(object, name, {
    value,
    configurable: true,
    enumerable: true,
    writable: true,
  });
