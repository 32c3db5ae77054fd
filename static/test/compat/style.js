// Which features of the data a style sheet uses.
import { lexer, parse, walk } from 'css-tree';
import { lookUp, parts } from './support.js';

/** Reports what a style sheet uses. */
export function checkStyle(report, name, text) {
  const tree = parse(text, {
    parseCustomProperty: true,
    positions: true,
    onParseError: (error) => report.odd(`style that can't be read: ${error.message}`, name),
  });
  const check = new StyleCheck(report, name, text);
  check.children(tree, []);
}

/** Reports what a list of declarations uses, that of a style attribute. */
export function checkDeclarations(report, text, place) {
  if (text.includes('{}')) return;
  const tree = parse(text, { context: 'declarationList', parseCustomProperty: true });
  new StyleCheck(report, place, text).children(tree, []);
}

/** Reports the selectors in a text that asks for elements. */
export function checkSelectors(report, text, place) {
  const tree = parse(text, { context: 'selectorList' });
  new StyleCheck(report, place, text).selectors(tree);
}

/** Reports what a list of media queries uses. */
export function checkMedia(report, text, place) {
  if (text.includes('{}')) return;
  const tree = parse(text, { context: 'mediaQueryList' });
  new StyleCheck(report, place, text).media(tree);
}

const units = (kind, ...names) =>
  names.map((name) => [name, [...['css', 'types'], ...kind.split('.')]]);

/** For each unit the way to what has it. */
const unitWays = new Map([
  ...['cap', 'ch', 'em', 'ex', 'ic', 'lh', 'rcap', 'rch', 'rem', 'rex', 'ric', 'rlh', 'vb', 'vh', 'vi', 'vmax', 'vmin', 'vw', 'Q'] // prettier-ignore
    .map((name) => [name.toLowerCase(), ['css', 'types', 'length', name]]),
  ...units('length', 'px', 'cm', 'mm', 'in', 'pt', 'pc'),
  ...units('length.container_query_length_units', 'cqw', 'cqh', 'cqi', 'cqb', 'cqmin', 'cqmax'),
  ...['dynamic', 'large', 'small'].flatMap((size) =>
    units(
      `length.viewport_percentage_units_${size}`,
      ...['w', 'h', 'i', 'b', 'min', 'max'].map((end) => `${size[0]}v${end}`),
    ),
  ),
  ...units('angle', 'deg', 'grad', 'rad', 'turn'),
  ...units('time', 's', 'ms'),
  ...units('flex', 'fr'),
  ...units('resolution', 'dpi', 'dpcm', 'dppx', 'x'),
]);

/** For each function that isn't one property's, the ways to it. */
const functionWays = new Map();
(function enter(way) {
  for (const [id, node] of parts(lookUp(way))) {
    const deeper = [...way, id];
    if (node.__compat) functionWays.set(id, [...(functionWays.get(id) ?? []), deeper]);
    enter(deeper);
  }
})(['css', 'types']);
functionWays.set('linear', [['css', 'types', 'easing-function', 'linear-function']]);
for (const name of ['rgba']) functionWays.set(name, functionWays.get('rgb') ?? []);

const combinators = {
  ' ': 'descendant',
  '>': 'child',
  '+': 'next-sibling',
  '~': 'subsequent-sibling',
  '||': 'column',
};

/** Looks through one sheet or a part of one. */
export class StyleCheck {
  constructor(report, name, text) {
    Object.assign(this, { report, name, text });
  }

  place(node) {
    const { loc } = node;
    const text = loc ? this.text.slice(loc.start.offset, loc.end.offset) : this.text;
    return `${this.name}: ${text.slice(0, 60).replace(/\s+/g, ' ')}`;
  }

  /** All that stands in a block or a sheet; `around` are the rules that hold it. */
  children(holder, around) {
    const before = new Set(); // properties that have an older value already
    holder.children?.forEach((node) => {
      if (node.type === 'Declaration') this.declaration(node, before);
      else if (node.type === 'Atrule') this.atRule(node, around);
      else if (node.type === 'Rule') this.rule(node, around);
      else if (node.type === 'Raw')
        this.report.odd(`style that can't be read: ${node.value}`, this.place(node));
      else if (!/^(Comment|CDO|CDC)$/.test(node.type))
        this.report.odd(`style node: ${node.type}`, this.place(node));
    });
  }

  rule(node, around) {
    if (around.includes('rule')) this.report.use(['css', 'selectors', 'nesting'], this.place(node));
    if (around.includes('keyframes')) {
      this.children(node.block, [...around, 'rule']);
      return;
    }
    const newer = this.selectors(node.prelude);
    if (newer.length && node.prelude.children?.size > 1)
      this.report.bad(
        `a list of selectors dies with one that is newer than promised: ${newer.join(', ')}`,
        this.place(node.prelude),
      );
    this.children(node.block, [...around, 'rule']);
  }

  /** Reports the parts of selectors; gives the keys of those that are newer. */
  selectors(tree) {
    const newer = [];
    const use = (names, node, of) => {
      const found = this.report.use(['css', 'selectors', ...names], this.place(tree), of);
      if (found) newer.push(found.key);
      return node;
    };
    if (tree.type === 'Raw') this.report.odd(`selector: ${tree.value}`, this.place(tree));
    walk(tree, (node) => {
      if (node.type === 'PseudoClassSelector' || node.type === 'PseudoElementSelector') {
        use([node.name], node, `selector: ${node.name}`);
        if (node.name === 'not' && node.children?.first?.children?.size > 1)
          use(['not', 'selector_list'], node);
        if (node.name === 'is' || node.name === 'where') use([node.name], node);
      } else if (node.type === 'Nth' && node.selector) use(['nth-child', 'of_syntax'], node);
      else if (node.type === 'Combinator')
        use([combinators[node.name] ?? node.name], node, `combinator: ${node.name}`);
      else if (node.type === 'AttributeSelector') {
        use(['attribute'], node);
        if (node.flags)
          use(['attribute', node.flags === 's' ? 'case_sensitive_modifier' : 'case_insensitive_modifier'], node); // prettier-ignore
      } else if (node.type === 'NestingSelector') use(['nesting'], node);
      else if (node.type === 'IdSelector') use(['id'], node);
      else if (node.type === 'ClassSelector') use(['class'], node);
      else if (node.type === 'TypeSelector') use([node.name === '*' ? 'universal' : 'type'], node);
    });
    return newer;
  }

  atRule(node, around) {
    this.head(node, around);
    const name = bareName(node);
    if (!node.block) return;
    if (name === 'font-face' || name === 'property' || name === 'counter-style' || name === 'page')
      this.descriptors(node, name);
    else this.children(node.block, [...around, name]);
    if (name === 'page') this.children(onlyAtRules(node.block), [...around, name]);
  }

  /** Reports what stands before the block of a rule with @. */
  head(node, around) {
    const place = this.place(node.prelude ?? node);
    const name = bareName(node);
    if (around.includes('page')) this.report.use(['css', 'at-rules', 'page', `at_${name}`], place);
    else if (node.name !== 'charset') this.report.use(['css', 'at-rules', name], place);
    if (name === 'media' && node.prelude) this.media(node.prelude);
    if (name === 'import' && node.prelude) this.media(node.prelude);
    if (name === 'container' && node.prelude) this.container(node.prelude);
    if (name === 'supports' && node.prelude)
      walk(node.prelude, (part) => {
        if (part.type === 'SupportsDeclaration' || part.type !== 'FeatureFunction') return;
        this.report.use(['css', 'at-rules', 'supports', part.feature ?? part.name], place);
      });
  }

  descriptors({ block }, rule) {
    block.children.forEach((node) => {
      if (node.type !== 'Declaration') return;
      const way = ['css', 'at-rules', rule, node.property];
      if (lookUp(way)) this.report.use(way, this.place(node));
      else this.declaration(node, new Set());
    });
  }

  media(tree) {
    const place = this.place(tree);
    if (tree.type === 'Raw') return this.report.odd(`media query: ${tree.value}`, place);
    walk(tree, (node) => {
      if (node.type === 'FeatureRange') {
        this.report.use(['css', 'at-rules', 'media', 'range_syntax'], place);
        for (const side of [node.left, node.middle, node.right])
          if (side?.type === 'Identifier') this.mediaFeature(side.name, undefined, place);
      }
      if (node.type === 'Feature') this.mediaFeature(node.name, node.value?.name, place);
      if (node.type === 'Raw') this.report.odd(`media query: ${node.value}`, place);
      if (node.type === 'Condition' && [...node.children].some((one) => one.name === 'or'))
        this.report.use(['css', 'at-rules', 'media', 'or_syntax'], place);
      if (node.type === 'Dimension') this.unit(node, place);
    });
    return undefined;
  }

  mediaFeature(feature, value, place) {
    const name = feature.replace(/^(min|max)-/, '');
    const way = ['css', 'at-rules', 'media', name];
    this.report.use(way, place, `media feature: ${name}`);
    if (value && lookUp([...way, value])) this.report.use([...way, value], place);
  }

  container(tree) {
    walk(tree, (node) => {
      if (node.type === 'Dimension') this.unit(node, this.place(tree));
    });
  }

  /** Reports a declaration, and whether an older one of its property stands before it. */
  declaration(node, before) {
    const { property } = node;
    const custom = property.startsWith('--');
    const place = this.place(node);
    const found = [
      custom
        ? this.report.use(['css', 'properties', 'custom-property'], place)
        : this.property(property, place),
      ...this.value(node, custom ? '' : property),
    ].filter(Boolean);
    for (const one of found) one.before = (one.before ?? true) && before.has(property);
    if (!found.length && !custom) before.add(property);
  }

  property(property, place) {
    const way = ['css', 'properties', property];
    return this.report.use(way, place, `property: ${property}`);
  }

  /** Reports what a value is made of; gives what of it is newer than promised. */
  value({ value, property: written, ...node }, property) {
    const place = this.place(node);
    const found = [];
    const use = (way, of) => found.push(this.report.use(way, place, of));
    if (property && value.type === 'Value' && !usesVariable(value)) {
      const { error } = lexer.matchProperty(property, value);
      if (error?.name === 'SyntaxMatchError')
        this.report.odd(`value: ${written}: ${error.css}`, place);
    }
    if (value.type === 'Raw' && value.value.trim())
      this.report.odd(`value: ${written}: ${value.value}`, place);
    walk(value, (part) => {
      if (part.type === 'Identifier' && property)
        for (const way of wordWays(property, part.name)) use(way);
      if (
        part.type === 'Identifier' &&
        property === 'writing-mode' &&
        part.name !== 'horizontal-tb'
      )
        use(['css', 'properties', property, 'vertical_oriented_form_controls']);
      if (part.type === 'Dimension') found.push(this.unit(part, place));
      if (part.type === 'Url') use(['css', 'types', 'url']);
      if (part.type === 'Hash' && property)
        use(['css', 'types', 'color', 'rgb_hexadecimal_notation']);
      if (part.type === 'Function')
        for (const way of this.functionWays(property, part)) use(way, `function: ${part.name}`);
    });
    return found;
  }

  unit({ unit }, place) {
    const way = unitWays.get(unit.toLowerCase());
    if (way) return this.report.use(way, place);
    return this.report.odd(`unit: ${unit}`, place);
  }

  functionWays(property, { name, children }) {
    const own = [name, `${name}_function`, `${name}()`]
      .map((id) => ['css', 'properties', property, id])
      .filter(lookUp);
    const ways = own.length ? own.slice(0, 1) : (functionWays.get(name) ?? []);
    // A gradient's linear-gradient() is also an image's: the way that is old counts.
    const [first] = ways;
    if (!first) return [['css', 'types', name]];
    const chosen = ways.find((way) => !this.report.lacks(way)) ?? first;
    const parted = [...children].some((one) => one.type === 'Operator' && one.value === ',');
    const more = [
      ...(parted ? [] : ['space_separated_parameters']),
      ...(children.first?.name === 'from' ? ['relative_syntax'] : []),
    ];
    return [chosen, ...more.map((id) => [...chosen, id]).filter(lookUp)];
  }
}

/** The features that a word in a property's value is: of the property, or of those that it stands for. */
function wordWays(property, word) {
  const own = ['css', 'properties', property, word];
  if (lookUp(own)) return [own];
  if (lookUp(['css', 'types', 'global_keywords', word]))
    return [['css', 'types', 'global_keywords', word]];
  const color = ['css', 'types', 'color', word.toLowerCase()];
  if (lookUp(color)) return [color];
  return Object.keys(lookUp(['css', 'properties']))
    .filter((one) => one.startsWith(`${property}-`))
    .map((one) => ['css', 'properties', one, word])
    .filter(lookUp);
}

const bareName = ({ name }) => name.replace(/^-webkit-/, '');

function usesVariable(value) {
  let found = false;
  walk(value, (node) => {
    found ||= node.type === 'Function' && /^(var|env)$/.test(node.name);
  });
  return found;
}

const onlyAtRules = (block) => ({ children: [...block.children].filter((one) => one.type === 'Atrule') }); // prettier-ignore
