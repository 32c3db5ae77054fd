// Which features of the data the syntax of a script is made of.

const statement = (name, ...more) => [['javascript', 'statements', name, ...more]];
const operator = (name, ...more) => [['javascript', 'operators', name, ...more]];
const grammar = (...names) => [['javascript', 'grammar', ...names]];
const functions = (...names) => [['javascript', 'functions', ...names]];
const classes = (...names) => [['javascript', 'classes', ...names]];

const operators = {
  '+': 'addition',
  '-': 'subtraction',
  '*': 'multiplication',
  '/': 'division',
  '%': 'remainder',
  '**': 'exponentiation',
  '&': 'bitwise_and',
  '|': 'bitwise_or',
  '^': 'bitwise_xor',
  '<<': 'left_shift',
  '>>': 'right_shift',
  '>>>': 'unsigned_right_shift',
  '&&': 'logical_and',
  '||': 'logical_or',
  '??': 'nullish_coalescing',
  '==': 'equality',
  '!=': 'inequality',
  '===': 'strict_equality',
  '!==': 'strict_inequality',
  '<': 'less_than',
  '<=': 'less_than_or_equal',
  '>': 'greater_than',
  '>=': 'greater_than_or_equal',
  in: 'in',
  instanceof: 'instanceof',
};
const unary = {
  '-': 'unary_negation',
  '+': 'unary_plus',
  '!': 'logical_not',
  '~': 'bitwise_not',
  typeof: 'typeof',
  void: 'void',
  delete: 'delete',
};

const none = () => []; // as old as scripts are, or told by what holds it

function functionKind(node, where) {
  const kind = `${node.async ? 'async_' : ''}${node.generator ? 'generator_' : ''}function`;
  return [['javascript', where, kind]];
}

const parameters = (node) => [
  ...(node.params.some(({ type }) => type === 'AssignmentPattern')
    ? functions('default_parameters')
    : []),
  ...(node.params.some(({ type }) => type === 'RestElement') ? functions('rest_parameters') : []),
];

/** Whether an await stands outside of every function, where only modules may have it. */
const isTop = (ancestors) =>
  !ancestors.some(({ type }) => /Function|StaticBlock|PropertyDefinition/.test(type));

const isPrivate = (key) => key.type === 'PrivateIdentifier';

/** For each kind of node, the ways to what it takes: (node, its ancestors, the last its parent). */
const kinds = {
  Program: none,
  ExpressionStatement: none,
  Identifier: none,
  Directive: none,
  VariableDeclarator: none,
  SwitchCase: none,
  CatchClause: none,
  ClassBody: none,
  TemplateElement: none,
  Property: (node) => [
    ...(node.computed ? operator('object_initializer', 'computed_property_names') : []),
    ...(node.shorthand ? operator('object_initializer', 'shorthand_property_names') : []),
    ...(node.method ? operator('object_initializer', 'shorthand_method_names') : []),
    ...(node.kind === 'get' || node.kind === 'set' ? functions(node.kind) : []),
  ],
  PrivateIdentifier: none,
  Super: () => operator('super'),
  ThisExpression: () => operator('this'),
  BlockStatement: () => statement('block'),
  EmptyStatement: () => statement('empty'),
  DebuggerStatement: () => statement('debugger'),
  WithStatement: () => statement('with'),
  ReturnStatement: () => statement('return'),
  LabeledStatement: () => statement('label'),
  BreakStatement: () => statement('break'),
  ContinueStatement: () => statement('continue'),
  IfStatement: () => statement('if_else'),
  SwitchStatement: () => statement('switch'),
  ThrowStatement: () => statement('throw'),
  TryStatement: (node) =>
    node.handler && !node.handler.param
      ? statement('try_catch', 'optional_catch_binding')
      : statement('try_catch'),
  WhileStatement: () => statement('while'),
  DoWhileStatement: () => statement('do_while'),
  ForStatement: () => statement('for'),
  ForInStatement: () => statement('for_in'),
  ForOfStatement: (node, ancestors) => [
    ...statement(node.await ? 'for_await_of' : 'for_of'),
    ...(node.await && isTop(ancestors) ? operator('await', 'top_level') : []),
  ],
  VariableDeclaration: (node) => statement(node.kind.replace(' ', '_')),
  FunctionDeclaration: (node) => [...functionKind(node, 'statements'), ...parameters(node)],
  FunctionExpression: (node) => [...functionKind(node, 'operators'), ...parameters(node)],
  ArrowFunctionExpression: (node) => [
    ...functions('arrow_functions'),
    ...(node.async ? functionKind(node, 'operators') : []),
    ...parameters(node),
  ],
  ClassDeclaration: () => statement('class'),
  ClassExpression: () => operator('class'),
  MethodDefinition: (node) =>
    isPrivate(node.key) ? classes('private_class_methods') : functions('method_definitions'),
  PropertyDefinition: (node) => [
    ...classes(isPrivate(node.key) ? 'private_class_fields' : 'public_class_fields'),
    ...(node.static ? classes('static', 'class_fields') : []),
  ],
  StaticBlock: () => classes('static', 'initialization_blocks'),
  ArrayExpression: () => grammar('array_literals'),
  ObjectExpression: () => operator('object_initializer'),
  SequenceExpression: () => operator('comma'),
  UnaryExpression: (node) => operator(unary[node.operator] ?? node.operator),
  UpdateExpression: (node) => operator(node.operator === '++' ? 'increment' : 'decrement'),
  BinaryExpression: (node) =>
    isPrivate(node.left)
      ? classes('private_class_fields_in')
      : operator(operators[node.operator] ?? node.operator),
  LogicalExpression: (node) => operator(operators[node.operator] ?? node.operator),
  AssignmentExpression: (node) =>
    operator(
      node.operator === '='
        ? 'assignment'
        : `${operators[node.operator.slice(0, -1)] ?? node.operator}_assignment`,
    ),
  ConditionalExpression: () => operator('conditional'),
  CallExpression: none,
  NewExpression: () => operator('new'),
  MemberExpression: () => operator('property_accessors'),
  ChainExpression: () => operator('optional_chaining'),
  ParenthesizedExpression: () => operator('grouping'),
  YieldExpression: (node) => operator(node.delegate ? 'yield_star' : 'yield'),
  AwaitExpression: (node, ancestors) =>
    isTop(ancestors) ? operator('await', 'top_level') : operator('await'),
  TemplateLiteral: () => grammar('template_literals'),
  TaggedTemplateExpression: () => grammar('template_literals'),
  MetaProperty: (node) => operator(node.meta.name === 'new' ? 'new_target' : 'import_meta'),
  ObjectPattern: () => operator('destructuring'),
  ArrayPattern: () => operator('destructuring'),
  AssignmentPattern: none,
  RestElement: (node, ancestors) => {
    const holder = ancestors.at(-1)?.type;
    if (holder === 'ObjectPattern') return operator('destructuring', 'rest_in_objects');
    if (holder === 'ArrayPattern') return operator('destructuring', 'rest_in_arrays');
    return functions('rest_parameters');
  },
  SpreadElement: (node, ancestors) =>
    operator(
      'spread',
      {
        ObjectExpression: 'spread_in_object_literals',
        ArrayExpression: 'spread_in_arrays',
      }[ancestors.at(-1)?.type] ?? 'spread_in_function_calls',
    ),
  ImportDeclaration: (node) => importKind(node, 'statements'),
  ImportExpression: (node) => [
    ...importKind(node, 'operators'),
    ...(node.options ? operator('import', 'options_parameter') : []),
  ],
  ImportSpecifier: none,
  ImportDefaultSpecifier: none,
  ImportNamespaceSpecifier: none,
  ImportAttribute: none,
  ExportNamedDeclaration: () => statement('export'),
  ExportDefaultDeclaration: () => statement('export', 'default'),
  ExportAllDeclaration: (node) =>
    node.exported ? statement('export', 'namespace') : statement('export'),
  ExportSpecifier: none,
  Literal: (node) => {
    if (node.regex) return grammar('regular_expression_literals');
    if (node.bigint) return [['javascript', 'builtins', 'BigInt']];
    if (typeof node.value === 'number')
      return [
        ...(node.raw.includes('_') ? grammar('numeric_separators') : []),
        ...(/^0b/i.test(node.raw) ? grammar('binary_numeric_literals') : []),
        ...(/^0o/i.test(node.raw) ? grammar('octal_numeric_literals') : []),
      ];
    return [];
  },
};

function importKind(node, where) {
  const way = ['javascript', where, 'import'];
  return [
    way,
    ...(node.attributes?.length ? [[...way, 'import_attributes']] : []),
    ...(node.phase ? [[...way, node.phase === 'source' ? 'import_source' : node.phase]] : []),
    ...(node.specifiers?.some(({ imported }) => imported?.type === 'Literal')
      ? [[...way, 'arbitrary_module_namespace_identifier_names']]
      : []),
  ];
}

/** The ways to the features that a node is made of; undefined for a kind that isn't known here. */
export const syntaxOf = (node, ancestors) => kinds[node.type]?.(node, ancestors);
