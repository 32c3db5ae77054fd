// The list of screens that the browser tests look at: no screen of the page is missing.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { phones } from './browser/phones.js';
import { phoneOf, screens } from './browser/screens.js';
import { modules, nodes } from './modules.js';

test('every screen of the page is looked at, and each of its states has a name of its own', () => {
  const { ast } = modules.find(({ path }) => path === 'screens.js');
  const [{ init }] = nodes(ast, 'VariableDeclarator').filter(({ id }) => id.name === 'screens');
  const names = init.properties.map(({ key }) => key.name ?? key.value);
  assert.deepEqual(Object.keys(screens).sort(), ['bikes', ...names].sort());
  for (const [name, states] of Object.entries(screens))
    assert.ok(Object.keys(states).length > 0, `${name} has a state`);
  const states = Object.values(screens).flatMap(Object.keys);
  assert.equal(new Set(states).size, states.length);
});

test('every way is gone on a phone that there is, and no phone lies unused', () => {
  const used = new Set(Object.values(screens).flatMap(Object.values).map(phoneOf));
  assert.deepEqual([...used].sort(), Object.keys(phones).sort());
});
