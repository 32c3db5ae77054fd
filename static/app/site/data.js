import { files } from './files.js';

const loaded = new Map();

/** One of the data files that go with this version of the page, parsed; fetched once. */
export function file(name) {
  if (!loaded.has(name)) loaded.set(name, load(name));
  return loaded.get(name);
}

async function load(name) {
  const response = await fetch(files[`data/${name}`], { credentials: 'same-origin' });
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  return response.json();
}
