/* eslint no-template-curly-in-string: off -- the samples are scripts */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ownNames, strangers } from './own-names.js';
import { newerIn, sampleReport } from './samples.js';
import { checkScripts } from './script.js';

const pageOwn = { names: ownNames, strangers };
const none = { names: {}, strangers: [] };
const newer = (text, module = true, own = none) =>
  newerIn((report) => checkScripts(report, [{ name: 'a.js', text, module }], own));

const js = (name) => `javascript.${name}`;

const syntax = {
  'await import("b");': ['operators.await.top_level'],
  'for await (const a of b());': ['operators.await.top_level'],
  'async function f(a) { await a; }': [],
  'class A { static { A.b = 1; } }': ['classes.static.initialization_blocks'],
  'class A { #a; static is(a) { return #a in a; } }': [],
  'a?.b ?? c; d ||= 1_000; export * as e from "f";': [],
  'import a from "b" with { type: "json" };': ['statements.import.import_attributes'],
  '/(?<=a)b/;': ['regular_expressions.lookbehind_assertion'],
  'new RegExp("(?<!a)b", "u");': ['regular_expressions.lookbehind_assertion'],
  '/(?<year>\\d)\\k<year>\\p{L}/su;': [],
  '/[\\p{L}--[a-z]]/v;': ['builtins.RegExp.unicodeSets'],
  '/(?<a>b)|(?<a>c)/;': [
    'regular_expressions.named_capturing_group.duplicate_named_capturing_groups',
  ],
  '/(?i:a)b/;': ['regular_expressions.modifier'],
};

for (const [text, want] of Object.entries(syntax))
  test(`syntax: ${text}`, () => {
    const known = ['classes.public_class_fields']; // which are not whole in iOS 15.4
    assert.deepEqual(
      newer(text).filter((key) => !known.includes(key.slice(11))),
      want.map(js),
    );
  });

const builtin = (name) => js(`builtins.${name}`);

const names = {
  'structuredClone({});': [],
  'reportError(1); new URLPattern();': ['api.URLPattern'],
  '[1].toSorted();': [builtin('Array.toSorted')],
  'const list = [1]; list.toSorted();': [builtin('Array.toSorted')],
  'export const f = (list) => list.with(0, 1);': [
    builtin('Array.with'),
    builtin('TypedArray.with'),
  ],
  '"a".at(-1); Object.hasOwn({}, "b"); [1].findLast(Boolean);': [],
  'new Map().values().map(String);': [builtin('Iterator.map')],
  'const all = "ab".matchAll(/a/g); all.filter(Boolean).forEach(String);': [
    builtin('Iterator.filter'),
    builtin('Iterator.forEach'),
  ],
  'function* many() { yield 1; } many().some(Boolean);': [builtin('Iterator.some')],
  'Object.values({}).map(String); [...new Set()].some(Boolean);': [],
  'export const f = (rows) => rows.map(String);': [],
  'Object.groupBy([], String); Promise.withResolvers(); Array.fromAsync([]);': [
    builtin('Array.fromAsync'),
    builtin('Object.groupBy'),
    builtin('Promise.withResolvers'),
  ],
  'new Set().union(new Set());': [builtin('Set.union')],
  'new Intl.DurationFormat("en");': [builtin('Intl.DurationFormat')],
  'navigator.share({}); navigator.storage.persist();': ['api.Navigator.share'],
  'const { wakeLock } = navigator;': ['api.Navigator.wakeLock'],
  'const { BarcodeDetector } = globalThis;': ['api.BarcodeDetector'],
  'matchMedia("print").matches;': [],
  'window.navigation;': ['api.Window.navigation'],
  'export const f = (url) => URL.canParse(url);': ['api.URL.canParse_static'],
  'new URL("a").searchParams.size; new Map().size;': ['api.URLSearchParams.size'],
  'AbortSignal.any([]); AbortSignal.timeout(1);': ['api.AbortSignal.any_static', 'api.AbortSignal.timeout_static'], // prettier-ignore
  'export const f = (e) => e.showPopover();': ['api.HTMLElement.showPopover'],
  'export const f = (e) => e.animate({}); document.querySelector("a").checkVisibility();': [
    'api.Element.checkVisibility',
  ],
  'document.addEventListener("scrollend", f);': [
    'api.Document.scrollend_event',
    'api.Element.scrollend_event',
    'api.VisualViewport.scrollend_event',
  ],
  'const brush = a.getContext("2d"); brush.filter = "none"; [1].filter(Boolean);': [
    'api.CanvasRenderingContext2D.filter',
  ],
  'new CompressionStream("gzip");': ['api.CompressionStream'],
  'document.startViewTransition(f);': ['api.Document.startViewTransition'],
};

for (const [text, want] of Object.entries(names))
  test(`names: ${text}`, () => assert.deepEqual(newer(text), want));

const options = {
  'createImageBitmap(a, { imageOrientation: "from-image" });': [
    'api.createImageBitmap.options_imageOrientation_parameter.from-image',
  ],
  'const how = { imageOrientation: "from-image" }; createImageBitmap(a, how);': [
    'api.createImageBitmap.options_imageOrientation_parameter.from-image',
  ],
  'createImageBitmap(a, { resizeQuality: "high" });': [
    'api.createImageBitmap.options_resizeQuality_parameter',
  ],
  'document.body.scrollIntoView({ block: "center" }); fetch("a", { cache: "no-store" });': [],
  'new CompressionStream("deflate-raw");': [
    'api.CompressionStream',
    'api.CompressionStream.CompressionStream.deflate-raw',
  ],
};

for (const [text, want] of Object.entries(options))
  test(`options: ${text}`, () => assert.deepEqual(newer(text), want));

const asked = {
  'document.querySelector("p:popover-open");': ['css.selectors.popover-open'],
  'matchMedia("(width < 40rem)");': ['css.at-rules.media.range_syntax'],
  'document.createElement("selectedcontent");': ['html.elements.selectedcontent'],
  'document.body.setAttribute("popover", "");': ['html.global_attributes.popover'],
  'html`<p popover>${a}</p>`;': ['html.global_attributes.popover'],
  'html`<details name=${a}><summary @click=${f}>b</summary></details>`;': [
    'html.elements.details.name',
  ],
  'html`<p @beforetoggle=${f}></p>`;': ['api.HTMLElement.beforetoggle_event'],
};

for (const [text, want] of Object.entries(asked))
  test(`in texts: ${text}`, () => assert.deepEqual(newer(text, true, pageOwn), want));

test('a name of the page’s own is none of a browser’s, and is told to be needed', () => {
  const own = { names: { bytes: 'how large a file is' }, strangers: [] };
  const report = sampleReport();
  const text = 'export const f = (file) => file.bytes;';
  const scripts = [{ name: 'a.js', text }];
  assert.deepEqual([...checkScripts(report, scripts, own)], ['bytes']);
  assert.deepEqual(report.keys(), []);
  assert.deepEqual(newer('new Response("").bytes();', true, own), ['api.Response.bytes']);
});

test('of a class that the page cannot come by nothing is found, until it can', () => {
  const strangers = [{ classes: /^SerialPort$/, by: ['serial'] }];
  const own = { names: {}, strangers };
  assert.deepEqual(newer('export const f = (a) => a.forget();', true, own), []);
  const found = newer('export const f = (a) => (navigator.serial, a.forget());', true, own);
  assert.ok(found.includes('api.SerialPort.forget'), found.join());
});

test('what the data does not know is told', () => {
  const report = sampleReport();
  const text = 'addEventListener("rescue", webkitThing); a.webkitOther();';
  checkScripts(report, [{ name: 'a.js', text }], none);
  assert.deepEqual([...report.unknown.keys()].sort(), [
    'event: rescue',
    'global: a',
    'global: webkitThing',
    'member: webkitOther',
  ]);
});
