// Which sentences a module says, and which values it gives them.
import { nodes } from './modules.js';

/** The ids that an argument may be: one text, or either of two. */
const idsOf = (node) =>
  node?.type === 'Literal'
    ? [node.value]
    : node?.type === 'ConditionalExpression'
      ? [...idsOf(node.consequent), ...idsOf(node.alternate)]
      : [];

/** The names of an object that is written out; undefined where it isn't, or brings in another. */
function namesOf(node) {
  if (!node) return [];
  const plain =
    node.type === 'ObjectExpression' &&
    node.properties.every(({ type, computed }) => type === 'Property' && !computed);
  return plain ? node.properties.map(({ key }) => key.name ?? key.value) : undefined;
}

/** Whether what stands there may only say that something isn't known. */
const mayBeNameless = (node) =>
  nodes(node, 'Literal').some(({ value }) => /^@?(not-known|none-on-card)$/.test(value));

/** The names of the values that may be so. */
const namelessOf = (node) =>
  (node?.properties ?? [])
    .filter(({ value }) => value && mayBeNameless(value))
    .map(({ key }) => key.name ?? key.value);

/**
 * The calls of t() in a syntax tree: [{id, names, nameless}], of those whose id and values
 * are written out; `nameless` are the values that may only say that they aren't known.
 */
export const said = (ast) =>
  nodes(ast, 'CallExpression').flatMap(({ callee, arguments: [id, values] }) => {
    const names = callee.name === 't' ? namesOf(values) : undefined;
    return names ? idsOf(id).map((one) => ({ id: one, names, nameless: namelessOf(values) })) : [];
  });
