// Which features of the data a regular expression is made of.
import { RegExpParser, visitRegExpAST } from '@eslint-community/regexpp';

const expression = (...names) => ['javascript', 'regular_expressions', ...names];
const builtin = (...names) => ['javascript', 'builtins', 'RegExp', ...names];

const flags = {
  d: 'hasIndices',
  g: 'global',
  i: 'ignoreCase',
  m: 'multiline',
  s: 'dotAll',
  u: 'unicode',
  v: 'unicodeSets',
  y: 'sticky',
};

const assertions = {
  lookahead: 'lookahead_assertion',
  lookbehind: 'lookbehind_assertion',
  start: 'input_boundary_assertion',
  end: 'input_boundary_assertion',
  word: 'word_boundary_assertion',
};

/** The ways to the features of one expression. One that can't be read throws. */
export function patternFeatures(source, letters) {
  const ways = [];
  const add = (...names) => ways.push(expression(...names));
  for (const letter of letters) ways.push(builtin(flags[letter] ?? letter));
  const names = [];
  const tree = new RegExpParser().parsePattern(source, 0, source.length, {
    unicode: letters.includes('u'),
    unicodeSets: letters.includes('v'),
  });
  visitRegExpAST(tree, {
    onAssertionEnter: (node) => add(assertions[node.kind]),
    onBackreferenceEnter: (node) =>
      add(typeof node.ref === 'string' ? 'named_backreference' : 'backreference'),
    onCapturingGroupEnter: (node) => {
      if (!node.name) return add('capturing_group');
      add('named_capturing_group');
      if (names.includes(node.name))
        add('named_capturing_group', 'duplicate_named_capturing_groups');
      return names.push(node.name);
    },
    onGroupEnter: () => add('non_capturing_group'),
    onModifiersEnter: () => add('modifier'),
    onCharacterClassEnter: () => add('character_class'),
    onExpressionCharacterClassEnter: () => ways.push(builtin('unicodeSets')),
    onClassStringDisjunctionEnter: () => ways.push(builtin('unicodeSets')),
    onCharacterSetEnter: (node) =>
      add(
        { any: 'wildcard', property: 'unicode_character_class_escape' }[node.kind] ??
          'character_class_escape',
      ),
    onQuantifierEnter: () => add('quantifier'),
  });
  return ways;
}
