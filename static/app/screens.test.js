// A screen has one name: in its address, for its file and its function, and on the page.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { test } from 'node:test';
import { modules, nodes } from '../test/modules.js';

const styles = new URL('../style/', import.meta.url);
const moduleAt = (path) => modules.find((module) => module.path === path);
const camelCase = (name) => name.replace(/-(\w)/g, (_, letter) => letter.toUpperCase());

/** What a module imports: local name -> {name, path}. */
const importedBy = ({ ast }) =>
  new Map(
    nodes(ast, 'ImportDeclaration').flatMap(({ source, specifiers }) =>
      specifiers.map(({ local, imported }) => [
        local.name,
        { name: imported?.name, path: posix.normalize(source.value) },
      ]),
    ),
  );

/** The screens that screens.js lists: [address, {name, path}]. */
function listed() {
  const module = moduleAt('screens.js');
  const imported = importedBy(module);
  const [{ init }] = nodes(module.ast, 'VariableDeclarator').filter(
    ({ id }) => id.name === 'screens',
  );
  return init.properties.map(({ key, value }) => [key.name ?? key.value, imported.get(value.name)]);
}

const valueOf = ({ properties }, name) =>
  properties.find(({ key }) => key?.name === name)?.value?.value;

/** The names that the screens made in a module say: every object with a name and a tab is one. */
const said = ({ ast }) =>
  nodes(ast, 'ObjectExpression')
    .filter((object) => valueOf(object, 'name') && valueOf(object, 'tab'))
    .map((object) => valueOf(object, 'name'));

const screens = [...listed(), ['bikes', importedBy(moduleAt('app.js')).get('bikes')]];

for (const [address, { name, path }] of screens) {
  test(`#/${address} is one word everywhere`, () => {
    assert.equal(posix.basename(path), `${address}.js`, 'its file');
    assert.equal(name, camelCase(address), 'its function');
    const names = said(moduleAt(path));
    assert.ok(names.length, `${path} makes a screen`);
    for (const own of names) assert.equal(own, address, 'its name on the page');
  });
}

test('no other screen is made anywhere', () => {
  const addresses = screens.map(([address]) => address);
  for (const module of modules)
    for (const name of said(module))
      assert.ok(addresses.includes(name), `${module.path} makes ${name}: enter it in screens.js`);
});

test('every style is imported, with the first screen or with the others', () => {
  const entries = ['main.css', 'screens.css'];
  const imported = entries
    .map((file) => readFileSync(new URL(file, import.meta.url), 'utf8'))
    .flatMap((text) => [...text.matchAll(/^@import '\.(.*)';$/gm)].map(([, path]) => path));
  const folders = { './': new URL('.', import.meta.url), '../style/': styles };
  for (const [folder, where] of Object.entries(folders))
    for (const path of readdirSync(where, { encoding: 'utf8', recursive: true }))
      if (path.endsWith('.css') && !entries.includes(path))
        assert.ok(imported.includes(`${folder}${path}`.slice(1)), `import ${path} in screens.css`);
});
