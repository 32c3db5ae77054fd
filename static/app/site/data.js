import { files } from './files.js';

/** @type {Map<string, Promise<any>>} */
const loaded = new Map();

/**
 * One of the data files that go with this version of the page, parsed; fetched once, and
 * again when it could not be had.
 *
 * @param {string} name
 * @returns {Promise<any>}
 */
export function file(name) {
  const known = loaded.get(name) ?? load(name);
  loaded.set(name, known);
  known.catch(() => loaded.delete(name));
  return known;
}

/** @param {string} name */
async function load(name) {
  try {
    const response = await fetch(files[`data/${name}`], { credentials: 'same-origin' });
    if (!response.ok) throw new Error(`${response.status}`);
    return await response.json();
  } catch (error) {
    // rescue.js knows by it what is missing.
    throw Object.assign(new Error(name, { cause: error }), { part: name });
  }
}
