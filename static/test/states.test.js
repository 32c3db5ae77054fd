// The list of screens that the browser tests look at: no screen of the page is missing.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { phones } from './browser/phones.js';
import { phoneOf, screens } from './browser/screens.js';
import { modules, nodes } from './modules.js';

test('every screen of the page is looked at, and each of its states has a name of its own', () => {
  const { ast } = modules.find(({ path }) => path === 'screens.js');
  const [{ init }] = nodes(ast, 'VariableDeclarator').filter(({ id }) => id.name === 'screens');
  const names = init.properties.map(({ key }) => key.name ?? key.value);
  for (const name of ['bikes', ...names])
    assert.ok(name in screens, `static/test/browser/screens.js has no states of ${name}`);
  for (const [name, states] of Object.entries(screens)) {
    assert.ok(name === 'bikes' || names.includes(name), `the page has no screen ${name}`);
    assert.ok(Object.keys(states).length > 0, `${name} has a state`);
  }
  const states = Object.values(screens).flatMap(Object.keys);
  assert.equal(new Set(states).size, states.length);
});

test('a browser test looks at each screen', () => {
  const folder = new URL('browser/', import.meta.url);
  const looked = readdirSync(folder)
    .filter((file) => file.endsWith('.test.js'))
    .map((file) => readFileSync(new URL(file, folder), 'utf8'))
    .flatMap((text) => [...text.matchAll(/^checkScreens\((.*)\);$/gm)])
    .flatMap(([, list]) => [...list.matchAll(/'([\w-]+)'/g)].map(([, name]) => name));
  for (const name of Object.keys(screens))
    assert.ok(looked.includes(name), `no screens-….test.js calls checkScreens with ${name}`);
  assert.equal(new Set(looked).size, looked.length, 'each once');
});

test('every way is gone on a phone that there is, and no phone lies unused', () => {
  const used = new Set(Object.values(screens).flatMap(Object.values).map(phoneOf));
  assert.deepEqual([...used].sort(), Object.keys(phones).sort());
});
