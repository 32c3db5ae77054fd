import { files } from './files.js';

/** @type {Map<string, Promise<any>>} */
const loaded = new Map();

/**
 * One of the data files that go with this version of the page, parsed; fetched once.
 *
 * @param {string} name
 * @returns {Promise<any>}
 */
export function file(name) {
  const known = loaded.get(name) ?? load(name);
  loaded.set(name, known);
  return known;
}

/** @param {string} name */
async function load(name) {
  const response = await fetch(files[`data/${name}`], { credentials: 'same-origin' });
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  return response.json();
}
