// Every style of the page takes its sizes from the tokens, what stays on the screen is
// measured, and oil has a colour of its own.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { generate, parse, walk } from 'css-tree';

/** All declarations of the page's own styles: where, in which rules, what. */
const declarations = ['./', '../app/'].flatMap((folder) => {
  const where = new URL(folder, import.meta.url);
  return readdirSync(where, { encoding: 'utf8', recursive: true })
    .filter((path) => path.endsWith('.css'))
    .flatMap((path) => declarationsIn(path, readFileSync(new URL(path, where), 'utf8')));
});

function declarationsIn(file, text) {
  const found = [];
  walk(parse(text, { parseCustomProperty: true }), {
    visit: 'Declaration',
    enter({ property, value }) {
      const media = this.atrule ? generate(this.atrule.prelude ?? parse('')) : '';
      const selector = this.rule ? generate(this.rule.prelude) : `@${this.atrule?.name}`;
      found.push({ file, property, value: generate(value), media, selector });
    },
  });
  return found;
}

// Paper has points and millimetres, and a size of its own for each sheet.
const onPaper = ({ file, media, selector }) =>
  /^@page/.test(selector) ||
  media === 'print' ||
  file === 'ui/paper.css' ||
  file === 'visit/label.css' ||
  /\.(paper|visit-sheet|bench-sheet|owner-sheet)\b/.test(selector);

const onScreen = declarations.filter((declaration) => !onPaper(declaration));
const named = ({ file, selector, property, value }) =>
  `${file}: ${selector} {${property}: ${value}}`;

/** Those that no rule allows, and no reason; a reason that nothing needs is amiss too. */
function amiss(list, isRight, reasons) {
  const wrong = list.filter(({ value }) => !isRight(value)).map(named);
  const unneeded = Object.keys(reasons).filter((name) => !wrong.includes(name));
  return { wrong: wrong.filter((name) => !Object.hasOwn(reasons, name)), unneeded };
}

const right = { wrong: [], unneeded: [] };

test('there are four sizes of letters and two weights', () => {
  const sizes = onScreen.filter(({ property }) => property === 'font-size');
  assert.ok(sizes.length > 20);
  const isRight = (value) => /^(var\(--(small|text|title|figure)\)|inherit)$/.test(value);
  const inPictures = 'in the picture’s own units, which grow with it';
  assert.deepEqual(
    amiss(sizes, isRight, {
      'settings/home.css: .sketch .nth {font-size: 12px}': inPictures,
      'ui/picture/picture.css: .tick {font-size: 13px}': inPictures,
      'ui/picture/picture.css: .along {font-size: 13px}': inPictures,
    }),
    right,
  );
  const weights = onScreen.filter(({ property }) => property === 'font-weight');
  assert.deepEqual(
    amiss(weights, (value) => /^(400|700)$/.test(value), {}),
    right,
  );
});

test('there are five sizes of room', () => {
  const rooms = onScreen.filter(({ property }) =>
    /^(margin|padding|gap|row-gap|column-gap)(-|$)/.test(property),
  );
  assert.ok(rooms.length > 100);
  const token = /var\(--(s[1-5]|edge|above|below|tabs|rail|list)\)/g;
  const isRight = (value) => {
    const rest = value
      .replace(token, ' ')
      .replace(/env\(safe-area-inset-\w+\)/g, ' ')
      .replace(/(^|\s)0?\.[1-5]\d*em\b/g, ' ') // beside a sign in a line
      .replace(/calc|max|[()*+,-]|\b(auto|0|1)\b/g, ' ');
    return rest.trim() === '';
  };
  assert.deepEqual(
    amiss(rooms, isRight, {
      'wide.css: .actions {padding-inline-end: max(var(--edge),100% - 63.5rem)}':
        'the bar goes across, its buttons no further than the screen',
    }),
    right,
  );
});

test('what stays on the screen is measured: no style but that of bars holds anything there', () => {
  const held = declarations.filter(
    ({ file, property, value }) =>
      !['bars.css', 'base.css', 'frame.css', 'messages.css', 'wide.css'].includes(file) &&
      ((property === 'position' && /fixed|sticky/.test(value)) || /^scroll-padding/.test(property)),
  );
  assert.deepEqual(
    amiss(held, () => false, {
      'phone/film.css: .film {position: fixed}': 'a film of two pixels, which keeps the screen on',
    }),
    right,
  );
});

test('oil has its colour in drawings, and nothing else has it', () => {
  const used = declarations.filter(({ value }) => value.includes('var(--oil)'));
  assert.ok(used.length >= 2);
  for (const declaration of used)
    assert.match(declaration.property, /^(fill|stroke)$/, named(declaration));
  const [oil] = declarations.filter(({ property, media }) => property === '--oil' && !media);
  const colours = oil.value.match(/#\w{6}/g) ?? [];
  assert.equal(colours.length, 2);
  const others = declarations.filter(({ property, value }) =>
    property === '--oil' ? false : colours.some((colour) => value.includes(colour)),
  );
  assert.deepEqual(others.map(named), []);
});
