// What the thing before the point is, as far as a script says so itself.
import { analyze } from 'eslint-scope';
import { classesOfGlobal, ownerWay } from './members.js';

const windows = ['window', 'self', 'globalThis'];

// Calls that give an iterator, an array or a text, whatever they are called on.
const gives = {
  Iterator: ['values', 'keys', 'entries', 'matchAll'],
  Array: ['split', 'map', 'filter', 'slice', 'flat', 'flatMap', 'concat'],
  String: ['trim', 'toLowerCase', 'toUpperCase', 'replaceAll', 'replace', 'join', 'padStart', 'toFixed', 'toISOString', 'normalize'], // prettier-ignore
};
const givenBy = {
  Object: { keys: 'Array', values: 'Array', entries: 'Array', getOwnPropertyNames: 'Array' },
  Array: { from: 'Array', of: 'Array' },
  JSON: { stringify: 'String' },
};

const givenByGlobal = { String: 'String', matchMedia: 'MediaQueryList' };
const heldByNavigator = { storage: 'StorageManager', serviceWorker: 'ServiceWorkerContainer' };
const heldAnywhere = { searchParams: 'URLSearchParams', sheet: 'CSSStyleSheet' };

/** Knows the scopes of one script, a parsed one. */
export class Receivers {
  #variables = new Map(); // the node of an identifier -> its variable
  #free = new Set(); // nodes of identifiers that name globals

  constructor(tree, sourceType) {
    const scopes = analyze(tree, { ecmaVersion: 2025, sourceType, ignoreEval: true });
    for (const scope of scopes.scopes)
      for (const { identifier, resolved } of scope.references)
        if (resolved?.defs.length) this.#variables.set(identifier, resolved);
        else this.#free.add(identifier);
  }

  /** The identifiers that name globals. */
  get free() {
    return [...this.#free];
  }

  /** The name of the global that a node is, `X` or `window.X`; undefined for none. */
  global(node) {
    if (node.type === 'Identifier') return this.#free.has(node) ? node.name : undefined;
    if (node.type === 'ChainExpression') return this.global(node.expression);
    if (node.type === 'MemberExpression' && this.isWindow(node.object)) return nameOf(node);
    return undefined;
  }

  isWindow(node) {
    return node.type === 'Identifier' && this.#free.has(node) && windows.includes(node.name);
  }

  /** What a constant was made of: the expression behind a variable that is set once. */
  behind(node) {
    const variable = this.#variables.get(node);
    const [def] = variable?.defs ?? [];
    if (def?.type === 'FunctionName') return def.node;
    if (variable?.defs.length !== 1 || def.type !== 'Variable' || def.node.id.type !== 'Identifier')
      return undefined;
    if (variable.references.filter((one) => one.isWrite()).length !== 1) return undefined;
    return def.node.init ?? undefined;
  }

  /**
   * What is before a point: {classes, fixed}: of which classes it is an instance, or
   * which class or namespace it is itself (fixed). Undefined when the script doesn't say.
   */
  of(node, depth = 0) {
    if (depth > 8) return undefined;
    const global = this.global(node);
    if (global) {
      if (ownerWay(global) && /^[A-Z]/.test(global)) return { classes: [global], fixed: true };
      const classes = classesOfGlobal(global);
      return classes.length ? { classes, fixed: false } : undefined;
    }
    const one = ofNode(node);
    if (one) return { classes: [one], fixed: false };
    switch (node.type) {
      case 'Identifier': {
        const behind = this.behind(node);
        return behind && this.of(behind, depth + 1);
      }
      case 'ChainExpression':
        return this.of(node.expression, depth + 1);
      case 'NewExpression': {
        const name = this.global(node.callee) ?? this.#inNamespace(node.callee);
        return name && ownerWay(name) ? { classes: [name], fixed: false } : undefined;
      }
      case 'CallExpression':
        return this.#given(node, depth);
      case 'MemberExpression':
        return this.#held(node);
      default:
        return undefined;
    }
  }

  /** The class in Intl.X or WebAssembly.X. */
  #inNamespace(node) {
    return node.type === 'MemberExpression' && this.global(node.object) ? nameOf(node) : undefined;
  }

  /** What a member is that is called by what it is: navigator.permissions, .searchParams. */
  #held(node) {
    const name = nameOf(node);
    if (heldAnywhere[name]) return { classes: [heldAnywhere[name]], fixed: false };
    if (!name || this.global(node.object) !== 'navigator') return undefined;
    const one = heldByNavigator[name] ?? name[0].toUpperCase() + name.slice(1);
    return ownerWay(one) ? { classes: [one], fixed: false } : undefined;
  }

  #given(node, depth) {
    const { callee } = node;
    if (callee.type === 'Identifier') {
      const one = givenByGlobal[this.global(callee)];
      if (one) return { classes: [one], fixed: false };
      const made = this.behind(callee);
      return made?.generator && !made.async ? { classes: ['Iterator'], fixed: false } : undefined;
    }
    if (callee.type !== 'MemberExpression') return undefined;
    const name = nameOf(callee);
    if (name === 'getContext' && node.arguments[0]?.value === '2d')
      return { classes: ['CanvasRenderingContext2D'], fixed: false };
    const of = this.of(callee.object, depth + 1);
    if (of?.fixed) {
      const one = givenBy[of.classes[0]]?.[name];
      return one && { classes: [one], fixed: false };
    }
    // What filters an iterator gives one again.
    if (of?.classes[0] === 'Iterator' && gives.Array.includes(name)) return of;
    const one = Object.keys(gives).find((kind) => gives[kind].includes(name));
    return one && { classes: [one], fixed: false };
  }
}

function ofNode(node) {
  if (node.type === 'ArrayExpression') return 'Array';
  if (node.type === 'TemplateLiteral') return 'String';
  if (node.type === 'Literal' && node.regex) return 'RegExp';
  if (node.type === 'Literal' && typeof node.value === 'string') return 'String';
  return undefined;
}

/** The name of a member, .x or ['x']; undefined for one that is worked out. */
export function nameOf({ property, computed, key }) {
  const name = property ?? key;
  if (name.type === 'Literal') return String(name.value);
  return computed || name.type !== 'Identifier' ? undefined : name.name;
}
