// What the core knows is asked of it, and not copied into the page.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { coreInNode } from '../../test/core-in-node.js';
import { modules, nodes } from '../../test/modules.js';

const call = await coreInNode();
const limits = JSON.parse(call('limits', '{}')).ok;

test('the core says what a page has to know beforehand', () => {
  assert.ok(limits.call > limits.text && limits.text > limits.note && limits.note > 0);
  assert.ok(limits.photos.length > 1 && limits.systems.length > 1 && limits.places.length > 1);
});

test('no field says by itself how much may be typed', () => {
  for (const { path, ast } of modules)
    for (const { value } of nodes(ast, 'TemplateElement'))
      assert.doesNotMatch(value.raw, /(max|min)length="/, path);
});

test('no limit of what the core takes stands in the page', () => {
  const known = [limits.call, limits.text];
  for (const { path, ast } of modules)
    for (const { value } of nodes(ast, 'Literal'))
      assert.ok(!known.includes(value), `${path}: ${value}`);
});

test('no list of the core’s words stands in the page', () => {
  const lists = Object.values(limits).filter(Array.isArray);
  for (const { path, ast } of modules)
    for (const { elements } of nodes(ast, 'ArrayExpression')) {
      const texts = elements.map((element) => element?.value);
      for (const list of lists)
        assert.ok(list.filter((word) => texts.includes(word)).length < 2, `${path}: ${texts}`);
    }
});

// What the core says of fasteners, steps and verdicts is for a person to read. A page
// that compares it decides.
const said =
  /^@?(step|purpose|drive|seal|role|debris|figure|level|leak|wrench|shelf|amend|caught|poured|layout|tool|part)\./;

test('no decision hangs on a word that the core says', () => {
  const compared = ({ ast }) => [
    ...nodes(ast, 'BinaryExpression').flatMap(({ left, right }) => [left, right]),
    ...nodes(ast, 'SwitchCase').map((branch) => branch.test),
    ...nodes(ast, 'CallExpression')
      .filter(({ callee }) =>
        /^(includes|startsWith|endsWith|indexOf)$/.test(callee.property?.name),
      )
      .flatMap(({ callee, arguments: given }) => [...given, ...(callee.object.elements ?? [])]),
  ];
  for (const module of modules)
    for (const node of compared(module))
      assert.doesNotMatch(String(node?.value ?? ''), said, module.path);
});
