// What is likely a mistake; how the code is laid out is prettier's.
import js from '@eslint/js';
import globals from 'globals';
import { ownLookup } from './test/own-lookup.js';

// What a lint rule of its own would say no better.
const cutting = [
  {
    selector: 'TemplateElement[value.raw=/maxlength=/]',
    message: 'A browser cuts what is pasted without a word: roomFor and fitted of ui/letters.js.',
  },
  {
    selector: 'MemberExpression[property.name=/^(substr|substring)$/]',
    message: 'Text is cut between characters: words/cut.js.',
  },
];
const writing = [
  {
    selector:
      'MemberExpression[property.name=/^toLocale(Date|Time)?String$/], MemberExpression[object.name="Intl"][property.name=/Format$/]',
    message:
      'Days, times, money and sizes are written in one way: words/dates.js, money.js, size.js.',
  },
];

export default [
  js.configs.recommended,
  {
    rules: {
      'array-callback-return': 'error',
      eqeqeq: 'error',
      'no-duplicate-imports': 'error',
      'no-eval': 'error',
      'no-implied-eval': 'error',
      'no-new-func': 'error',
      'no-self-compare': 'error',
      'no-template-curly-in-string': 'error',
      'no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'prefer-const': 'error',
    },
  },
  {
    files: ['app/**/*.js', 'sw.js'],
    ignores: ['app/**/*.test.js'],
    plugins: { tidysump: { rules: { 'own-lookup': ownLookup } } },
    rules: {
      'tidysump/own-lookup': 'error',
      'no-restricted-syntax': ['error', ...cutting, ...writing],
    },
  },
  {
    files: ['app/words/*.js'],
    ignores: ['app/**/*.test.js'],
    rules: { 'no-restricted-syntax': ['error', ...cutting] },
  },
  { files: ['app/**/*.js'], languageOptions: { globals: globals.browser } },
  { files: ['sw.js'], languageOptions: { globals: globals.serviceworker } },
  {
    files: ['test/**/*.js', '{app,style}/**/*.test.js'],
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
  },
];
