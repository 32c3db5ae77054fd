/* eslint-disable no-template-curly-in-string -- they are sources */
import { test } from 'node:test';
import { RuleTester } from 'eslint';
import { ownLookup } from './own-lookup.js';

RuleTester.describe = (_, run) => run();
RuleTester.it = test;

const valid = [
  'table.name; list[0]; list[list.length - 1]; list[steps.indexOf(step) + 1]',
  "table['constructor'];",
  'files[`data/${name}`]; counts[`${kind}s`];',
  'list.map((item, n) => others[n]);',
  'for (const [n, item] of list.entries()) use(item, others[n]);',
  'for (let i = 0; i < 9; i++) use(list[i]);',
  'let at = 0; while (list[at]) at = list.indexOf(7, at);',
  'const wanted = { [name]: 1 }; delete wanted[name];',
  "Object.hasOwn(table, name); 'wakeLock' in navigator;",
];

const lookup = [{ messageId: 'lookup' }];
const invalid = [
  ['screens[name];', lookup],
  ['table.questions?.[id];', lookup],
  ['acts[kind]?.();', lookup],
  ['table[`${name}`]; table[`to${name}`];', [...lookup, ...lookup]],
  ['(list, n) => list[n];', lookup],
  ['list.map((name) => table[name]);', lookup],
  ['for (const [name, item] of Object.entries(all)) use(item, table[name]);', lookup],
  ['let at = 0; at = name; table[at];', lookup],
  ['table[one + other];', lookup],
  ['const { [name]: value } = table;', lookup],
  [
    'values[name] = value; values[name] ??= [];',
    [{ messageId: 'writing' }, { messageId: 'writing' }],
  ],
  ['if (name in table) use(name);', [{ messageId: 'in' }]],
];

new RuleTester().run('own-lookup', ownLookup, {
  valid,
  invalid: invalid.map(([code, errors]) => ({ code, errors })),
});
