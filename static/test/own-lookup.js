// A rule of ESLint: what an object holds under a name is asked by own() of
// app/site/own.js, or of a Map. `table[name]` finds "constructor" and "toString" in
// every table, whatever was put there, and names come from addresses, files and
// records. What is surely an index or a name of our own stays free.

const everywhere = Object.getOwnPropertyNames(Object.prototype);
const arithmetic = ['-', '*', '/', '%', '<<', '>>', '>>>', '&', '|', '^'];
const eachWithIndex = ['every', 'filter', 'find', 'findIndex', 'flatMap', 'forEach', 'map', 'some'];
const indexOf = ['findIndex', 'findLastIndex', 'indexOf', 'lastIndexOf'];
const literal = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Reports whether a template can't become a name that every object has. */
const ownTemplate = ({ quasis }) => {
  const form = new RegExp(`^${quasis.map(({ value }) => literal(value.cooked)).join('.*')}$`, 's');
  return !everywhere.some((name) => form.test(name));
};

const isCallOf = (node, names) =>
  node.type === 'CallExpression' &&
  node.callee.type === 'MemberExpression' &&
  !node.callee.computed &&
  names.includes(node.callee.property.name);

/** Whether a function is handed to one that calls it with each item and its index. */
const takesIndex = (fn, place) =>
  place === 1 && isCallOf(fn.parent, eachWithIndex) && fn.parent.arguments[0] === fn;

/** Whether `n` is the first of `for (const [n, item] of list.entries())`. */
function countsEntries(name, { id, parent }) {
  const loop = parent.parent;
  return (
    id.type === 'ArrayPattern' &&
    id.elements[0] === name &&
    loop.type === 'ForOfStatement' &&
    isCallOf(loop.right, ['entries']) &&
    loop.right.callee.object.name !== 'Object'
  );
}

/** Whether a variable holds a number wherever it comes from. */
function isCounter(variable, isIndex) {
  const [def] = variable?.defs ?? [];
  if (!def) return false;
  const written = variable.references.filter((ref) => ref.isWrite() && ref.writeExpr);
  const counted = written.every(
    ({ writeExpr, identifier }) =>
      identifier.parent.type === 'UpdateExpression' || isIndex(writeExpr),
  );
  if (def.type === 'Parameter') {
    const place = def.node.params?.indexOf(def.name) ?? -1;
    const byDefault = def.node.params?.some(
      (param) => param.type === 'AssignmentPattern' && param.left === def.name,
    );
    return (takesIndex(def.node, place) || byDefault) && counted;
  }
  if (def.type !== 'Variable') return false;
  if (countsEntries(def.name, def.node)) return true;
  return def.node.id === def.name && written.length > 0 && counted;
}

const variableOf = (scope, name) => {
  for (let at = scope; at; at = at.upper) if (at.set.has(name)) return at.set.get(name);
  return undefined;
};

/** @type {import('eslint').Rule.RuleModule} */
export const ownLookup = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      lookup: 'A look-up by a name: own(table, name) of app/site/own.js, or a Map.',
      writing: 'A member of a name that is not known here: setOwn() of app/site/own.js, or a Map.',
      in: '`in` finds what every object has: Object.hasOwn, or a Map.',
    },
  },
  create(context) {
    const isIndex = (node, seen = new Set()) => {
      const both = (one, other) => isIndex(one, seen) && isIndex(other, seen);
      const kinds = {
        Literal: () => true,
        TemplateLiteral: () => ownTemplate(node),
        UpdateExpression: () => true,
        UnaryExpression: () => ['-', '+', '~'].includes(node.operator),
        BinaryExpression: () =>
          arithmetic.includes(node.operator) ||
          [node.left, node.right].some((side) => typeof side.value === 'number'),
        AssignmentExpression: () => node.operator !== '=' || isIndex(node.right, seen),
        ConditionalExpression: () => both(node.consequent, node.alternate),
        LogicalExpression: () => both(node.left, node.right),
        CallExpression: () =>
          isCallOf(node, indexOf) ||
          node.callee.name === 'Number' ||
          node.callee.object?.name === 'Math',
        MemberExpression: () => !node.computed && node.property.name === 'length',
        Identifier: () => {
          const variable = variableOf(context.sourceCode.getScope(node), node.name);
          if (seen.has(variable)) return true;
          seen.add(variable);
          return isCounter(variable, (part) => isIndex(part, seen));
        },
      };
      return Object.hasOwn(kinds, node.type) && kinds[node.type]();
    };
    return {
      MemberExpression(node) {
        if (!node.computed || isIndex(node.property)) return;
        const { parent } = node;
        if (parent.type === 'UnaryExpression' && parent.operator === 'delete') return;
        const written = parent.type === 'AssignmentExpression' && parent.left === node;
        context.report({ node, messageId: written ? 'writing' : 'lookup' });
      },
      'ObjectPattern > Property[computed=true]'(node) {
        if (!isIndex(node.key)) context.report({ node, messageId: 'lookup' });
      },
      'BinaryExpression[operator="in"]'(node) {
        if (node.left.type !== 'Literal' && node.left.type !== 'PrivateIdentifier')
          context.report({ node, messageId: 'in' });
      },
    };
  },
};
