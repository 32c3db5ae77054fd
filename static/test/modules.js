// The page's modules as a parser reads them, for the tests that look at all of them.
import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { parse } from 'acorn';
import { full } from 'acorn-walk';

const app = new URL('../app/', import.meta.url);

/** Every module of the page but its tests: [{path, room, ast, imports}]; `path` and `imports` are within app/. */
export const modules = readdirSync(app, { recursive: true })
  .filter((path) => path.endsWith('.js') && !path.endsWith('.test.js'))
  .map((path) => {
    const source = readFileSync(new URL(path, app), 'utf8');
    const ast = parse(source, { ecmaVersion: 'latest', sourceType: 'module' });
    return { path, room: roomOf(path), ast, imports: importsOf(path, ast) };
  });

/** The folder that a module is in; '' for the frame, which is in none. */
export function roomOf(path) {
  return path.includes('/') ? path.split('/')[0] : '';
}

/** Every node of a kind in a syntax tree. */
export function nodes(ast, type) {
  const found = [];
  full(ast, (node) => node.type === type && found.push(node));
  return found;
}

/** Every name that a syntax tree uses: of variables, members, and texts that may name one. */
export const namesIn = (ast) =>
  new Set([
    ...nodes(ast, 'Identifier').map(({ name }) => name),
    ...nodes(ast, 'MemberExpression').map(({ property }) => property.name),
    ...nodes(ast, 'Literal').map(({ value }) => value),
  ]);

/** The modules of the page that one imports, at once or later; packages are left out. */
function importsOf(path, ast) {
  const kinds = ['Import', 'ExportNamed', 'ExportAll'].map((kind) => `${kind}Declaration`);
  return [...kinds, 'ImportExpression']
    .flatMap((kind) => nodes(ast, kind))
    .map(({ source }) => source?.value)
    .filter((source) => source?.startsWith('.'))
    .map((source) => posix.join(posix.dirname(path), source));
}
