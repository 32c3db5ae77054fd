// What can be read in each scheme, computed from the colours themselves (WCAG 2.2, relative
// luminance and contrast ratio), and how much more where more contrast is asked for.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { generate, parse, walk } from 'css-tree';

const style = readFileSync(new URL('colours.css', import.meta.url), 'utf8');

/** The values of the custom properties on the root, of those that hold always or under a query. */
function valuesUnder(query) {
  const values = {};
  walk(parse(style), {
    visit: 'Declaration',
    enter({ property, value }) {
      const media = this.atrule ? generate(this.atrule.prelude) : '';
      if (media === query && property.startsWith('--') && generate(this.rule.prelude) === ':root')
        values[property.slice(2)] = generate(value).trim();
    },
  });
  return values;
}

/** What a colour is in a scheme; it may name another. */
function colour(values, name, scheme) {
  const other = /^var\(--([\w-]+)\)$/.exec(values[name]);
  if (other) return colour(values, other[1], scheme);
  const [light, dark] = values[name].match(/#\w{6}/g);
  return scheme === 'light' ? light : dark;
}

const luminance = (hex) => {
  const [r, g, b] = [1, 3, 5]
    .map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

function ratio(values, one, two, scheme) {
  const [low, high] = [one, two]
    .map((name) => luminance(colour(values, name, scheme)))
    .sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

const usual = valuesUnder('');
const more = { ...usual, ...valuesUnder('(prefers-contrast:more)') };
const grounds = ['paper', 'sheet'];
const signals = ['danger', 'warning', 'caution', 'notice'];
const on = (names, where) => names.flatMap((name) => where.map((ground) => [name, ground]));
const texts = [
  ...on(['ink', 'ink-soft', 'accent', ...signals], grounds),
  ...on(
    ['ink'],
    signals.map((name) => `${name}-sheet`),
  ),
  ...signals.map((name) => [name, `${name}-sheet`]),
  ['on-accent', 'accent'],
  ['paper', 'ink'],
];
const shapes = on(['rule', 'oil', 'accent'], grounds); // edges of controls, and drawings

for (const scheme of ['light', 'dark']) {
  test(`${scheme}: text has 4.5:1, shapes 3:1`, () => {
    for (const [one, two] of texts)
      assert.ok(ratio(usual, one, two, scheme) >= 4.5, `${one} on ${two}`);
    for (const [one, two] of shapes)
      assert.ok(ratio(usual, one, two, scheme) >= 3, `${one} on ${two}`);
  });
  test(`${scheme}, more contrast asked for: links, warnings and all text have 7:1, shapes 4.5:1`, () => {
    assert.notDeepEqual(more, usual);
    for (const [one, two] of texts)
      assert.ok(
        ratio(more, one, two, scheme) >= 7,
        `${one} on ${two}: ${ratio(more, one, two, scheme)}`,
      );
    for (const [one, two] of shapes)
      assert.ok(
        ratio(more, one, two, scheme) >= 4.5,
        `${one} on ${two}: ${ratio(more, one, two, scheme)}`,
      );
  });
}
