// Which features of the data a script uses: its syntax, and by their names what browsers
// have. A name that several things have counts as each that it may be, unless the script
// itself says what stands before the point, or the name is listed as one of the page's own.
import { parse } from 'acorn';
import { full, fullAncestor } from 'acorn-walk';
import { checkEvent } from './events.js';
import { checkMarkup, markupAttribute, markupElement } from './markup.js';
import { eventsByName, globalWays, lackedOnly, membersByName } from './members.js';
import { ownNames, strangers } from './own-names.js';
import { patternFeatures } from './pattern.js';
import { Receivers, nameOf } from './receiver.js';
import { checkMedia, checkSelectors } from './style.js';
import { inPart, lookUp, missing, parts } from './support.js';
import { syntaxOf } from './syntax.js';

/**
 * Reports what scripts use, [{name, text, module}], which make one page. `own` says what
 * is the page's own (own-names.js); gives the names and classes of it that were needed.
 */
export function checkScripts(report, scripts, own = { names: ownNames, strangers }) {
  const needed = new Set();
  const parsed = scripts.map(({ name, text, module = true }) => {
    const sourceType = module ? 'module' : 'script';
    const tree = parse(text, { ecmaVersion: 'latest', sourceType, ranges: true });
    return new ScriptCheck(report, name, text, tree, sourceType, own, needed);
  });
  const said = new Set(parsed.flatMap((one) => [...one.said()]));
  for (const one of parsed) one.run(said);
  return needed;
}

class ScriptCheck {
  constructor(report, name, text, tree, sourceType, own, needed) {
    Object.assign(this, { report, name, text, tree, own, needed });
    this.receivers = new Receivers(tree, sourceType);
    this.keys = new Set();
    this.lackings = new Map();
  }

  /** Where a node stands, worked out when it is asked for. */
  place({ start, end }) {
    return () =>
      `${this.name}: ${this.text.slice(start, Math.min(end, start + 60)).replace(/\s+/g, ' ')}`;
  }

  /** The names of all members and globals that the script has. */
  said() {
    const said = new Set(this.receivers.free.map(({ name }) => name));
    full(this.tree, (node) => {
      if (node.type === 'MemberExpression') said.add(nameOf(node));
      if (node.type === 'ObjectExpression')
        for (const property of node.properties) if (property.key) this.keys.add(nameOf(property));
    });
    return said;
  }

  /** `said` are the names in all scripts of the page. */
  run(said) {
    this.strange = this.own.strangers.filter(({ by }) => !by.some((name) => said.has(name)));
    for (const node of this.receivers.free) this.global(node.name, node);
    fullAncestor(this.tree, (node, ancestors) => {
      this.syntax(node, ancestors.slice(0, -1));
      if (node.type === 'MemberExpression') this.access(node, ancestors);
      else this[node.type]?.(node, ancestors.at(-2));
    });
  }

  syntax(node, ancestors) {
    const ways = syntaxOf(node, ancestors);
    if (!ways) return this.report.odd(`script node: ${node.type}`, this.place(node));
    for (const way of ways) this.report.use(way, this.place(node));
    return undefined;
  }

  Literal(node) {
    if (node.regex) this.pattern(node.regex.pattern, node.regex.flags, node);
  }

  pattern(source, flags, node) {
    for (const way of patternFeatures(source, flags)) this.report.use(way, this.place(node));
  }

  /** A global: where windows and workers differ, the one that has it counts. */
  global(name, node) {
    const ways = globalWays(name);
    if (name === 'arguments')
      return this.report.use(['javascript', 'functions', name], this.place(node));
    if (!ways.length && membersByName.get(name)?.some(({ owner }) => owner === 'EventTarget'))
      return this.member(name, { classes: ['EventTarget'], fixed: false }, node);
    if (!ways.length && name.startsWith('on'))
      return checkEvent(this.report, name.slice(2), this.place(node));
    if (!ways.length) return this.report.odd(`global: ${name}`, this.place(node));
    if (ways.every((way) => this.report.lacks(way))) this.report.use(ways[0], this.place(node));
    return undefined;
  }

  access(node, ancestors) {
    const name = nameOf(node);
    if (name === undefined || isOwn(node, ancestors)) return;
    if (this.receivers.isWindow(node.object)) {
      if (globalWays(name).length) this.global(name, node);
      return;
    }
    this.member(name, this.receivers.of(node.object), node);
  }

  /** `const { share } = navigator` names a member too. */
  VariableDeclarator({ id, init }) {
    if (id.type !== 'ObjectPattern' || !init) return;
    if (!this.receivers.isWindow(init)) this.unpacked(id, this.receivers.of(init));
    else for (const one of id.properties) if (one.key) this.global(nameOf(one), one);
  }

  ObjectPattern(node, parent) {
    if (parent?.type !== 'VariableDeclarator' || !parent.init) this.unpacked(node);
  }

  unpacked(pattern, receiver) {
    for (const property of pattern.properties)
      if (property.key && nameOf(property)) this.member(nameOf(property), receiver, property);
  }

  /** The features that a member of this name may be, and are newer than promised. */
  candidates(name, receiver) {
    const all = membersByName.get(name) ?? [];
    if (receiver) {
      const own = all.filter(
        ({ owner, fixed }) =>
          receiver.classes.includes(owner) && (fixed ?? receiver.fixed) === receiver.fixed,
      );
      if (own.length) return { known: true, list: own };
      if (receiver.fixed) return { known: true, list: [] };
    }
    // What there is one of is reached by its global, whose name tells it.
    const list = all.filter(({ fixed, owner }) => !fixed && !single.test(owner));
    // An iterator's is told by what gave it; else one that arrays have is theirs.
    const ofArrays = list.some(({ owner }) => owner === 'Array');
    return { list: list.filter(({ owner }) => owner !== 'Iterator' || !ofArrays) };
  }

  member(name, receiver, node) {
    if (/^(webkit|moz|ms)[A-Z]/.test(name) && !membersByName.has(name))
      this.report.odd(`member: ${name}`, this.place(node));
    const { known, list } = this.candidates(name, receiver);
    if (known) {
      if (list.every(({ way }) => this.report.lacks(way)))
        for (const { way } of list) this.report.use(way, this.place(node));
      return;
    }
    const lacked = ({ way }) => this.lacked(way);
    const newer = list.filter((one) => Object.keys(lacked(one)).length);
    // Where it may well be an old one, what others have in part is no reason to suspect it.
    const may = (
      newer.length < list.length
        ? newer.filter((one) => Object.values(lacked(one)).some((since) => !since.includes(inPart)))
        : newer
    ).filter(({ owner }) => !this.isStrange(owner));
    if (may.length && Object.hasOwn(this.own.names, name)) {
      this.needed.add(name);
      return;
    }
    for (const { way } of may) this.report.use(way, this.place(node));
  }

  lacked(way) {
    const key = way.join('.');
    if (!this.lackings.has(key)) this.lackings.set(key, lackedOnly(way, this.report.promised));
    return this.lackings.get(key);
  }

  /** Whether the page has no way to come by an instance of a class. */
  isStrange(owner) {
    const one = this.strange.find(({ classes }) => classes.test(owner));
    if (one) this.needed.add(String(one.classes));
    return Boolean(one);
  }

  NewExpression(node) {
    const name = this.receivers.global(node.callee);
    if (name === 'RegExp') this.patternOf(node);
    if (name)
      this.options(
        globalWays(name).map((way) => [...way, name]),
        node,
      );
    else if (node.callee.type === 'MemberExpression' && nameOf(node.callee)) {
      const owner = this.receivers.global(node.callee.object);
      const made = nameOf(node.callee);
      for (const way of owner ? globalWays(owner) : []) this.options([[...way, made, made]], node);
    }
  }

  patternOf({ arguments: [source, flags], ...node }) {
    if (source?.type === 'Literal' && typeof source.value === 'string')
      this.pattern(source.value, flags?.type === 'Literal' ? flags.value : '', node);
  }

  CallExpression(node) {
    const { callee } = node;
    const global = this.receivers.global(callee);
    if (global) {
      if (global === 'RegExp') this.patternOf(node);
      this.options(globalWays(global), node);
      this.named(global, node);
    } else if (callee.type === 'MemberExpression' && nameOf(callee)) {
      const { list } = this.candidates(nameOf(callee), this.receivers.of(callee.object));
      this.options(
        list.map(({ way }) => way),
        node,
      );
      this.named(nameOf(callee), node);
    }
  }

  /** Options and values that are newer than what takes them. */
  options(ways, node) {
    const said = this.saidIn(node.arguments);
    for (const way of ways)
      for (const [id, part] of parts(lookUp(way) ?? {}))
        this.option([...way, id], part, said, node);
  }

  option(way, part, said, node) {
    const named = tokensOf(way.at(-1), part).some((token) => said.has(token));
    if (named || way.at(-1).endsWith('_parameter'))
      for (const [id, deeper] of parts(part)) this.option([...way, id], deeper, said, node);
    if (!named) return;
    const lacked = missing(part, this.report.promised);
    for (const browser of Object.keys(missing(lookUp(way.slice(0, -1)), this.report.promised)))
      delete lacked[browser];
    if (Object.keys(lacked).length) this.report.use(way, this.place(node));
  }

  /** The names of options and the texts in what is handed over; those of the whole script where that is not told. */
  saidIn(list) {
    const said = new Set();
    const take = (node, depth) => {
      if (node.type === 'Literal') said.add(String(node.value));
      else if (node.type === 'ObjectExpression')
        for (const { key, value, argument } of node.properties) {
          if (key) said.add(nameOf({ key }));
          take(value ?? argument, depth);
        }
      else if (node.type === 'ArrayExpression')
        for (const element of node.elements) if (element) take(element, depth);
      if (node.type === 'ConditionalExpression') {
        take(node.consequent, depth);
        take(node.alternate, depth);
      }
      if (node.type !== 'Identifier' || depth > 4) return;
      const behind = this.receivers.behind(node);
      if (behind) take(behind, depth + 1);
      else for (const key of this.keys) if (key?.length >= longName) said.add(key);
    };
    for (const node of list) take(node, 0);
    return said;
  }

  /** What is named by a text: an event, an element, an attribute, a selector, a media query. */
  named(name, { arguments: [first, second], ...node }) {
    const text = first?.type === 'Literal' && typeof first.value === 'string' ? first.value : '';
    if (!text) return;
    const place = this.place(node);
    if (name === 'addEventListener' || name === 'removeEventListener')
      checkEvent(this.report, text, place);
    if (name === 'createElement') markupElement(this.report, text, place);
    if (/^(set|toggle)Attribute$/.test(name))
      markupAttribute(this.report, undefined, text, second?.value, place);
    if (/^(querySelector(All)?|closest|matches)$/.test(name))
      checkSelectors(this.report, text, place);
    if (name === 'matchMedia') checkMedia(this.report, text, place);
  }

  /** `onsuccess = …` waits for an event. */
  AssignmentExpression({ left }) {
    const name = left.type === 'MemberExpression' ? nameOf(left) : undefined;
    if (name?.startsWith('on') && eventsByName.has(name.slice(2)))
      checkEvent(this.report, name.slice(2), this.place(left));
  }

  TemplateLiteral(node) {
    const text = node.quasis.map(({ value }) => value.cooked ?? '').join('{}');
    if (/<[a-z!/]/i.test(text)) checkMarkup(this.report, this.name, text);
  }
}

/** Whether a member is of an instance of a class of the page's own, which extends nothing. */
function isOwn({ object, property }, ancestors) {
  if (property.type === 'PrivateIdentifier') return true;
  if (object.type !== 'ThisExpression') return false;
  const owner = ancestors.findLast(({ type }) => /^(Class|Function(Decl|Expr))/.test(type));
  const method = ancestors.at(ancestors.lastIndexOf(owner) - 1);
  const holder = /^Function/.test(owner?.type)
    ? method?.type === 'MethodDefinition' && ancestors.at(ancestors.lastIndexOf(method) - 2)
    : owner;
  return Boolean(holder) && /^Class/.test(holder.type) && !holder.superClass;
}

const single = /^(Worker)?Navigator$|^Screen$|^Permissions$|^UserActivation$/;

const longName = 8; // letters of an option that is looked for in a whole script

/** By which texts an option or value of the data is named in a script. */
function tokensOf(id, { __compat }) {
  const told = __compat?.description ?? '';
  const codes = [...told.matchAll(/<code>(.*?)<\/code>/g)].map(([, code]) => code);
  // "<code>options.x</code> parameter", "… supports <code>x</code>"; no more than that.
  const meant =
    codes.length > 1 || /^<code>[^<]*<\/code>( \w+)?$/.test(told) ? codes.slice(-1) : [];
  const bare = id.replace(/_(context|value)$/, '');
  return [
    id,
    bare,
    ...meant.map((code) =>
      code
        .split('.')
        .at(-1)
        .replace(/^["']|["']$/g, ''),
    ),
  ];
}
