import assert from 'node:assert/strict';
import { test } from 'node:test';
import { checkHeaders } from './headers.js';
import { checkManifest } from './manifest.js';
import { checkMarkup } from './markup.js';
import { newerIn, sampleReport } from './samples.js';

const samples = {
  '<p popover>a</p>': ['html.global_attributes.popover'],
  '<button popovertarget="a" type="button">b</button>': ['html.elements.button.popovertarget'],
  '<dialog open></dialog><input type="range" inputmode="decimal" enterkeyhint="done">': [],
  '<p inert>a</p>': ['html.global_attributes.inert'],
  '<img loading="lazy" fetchpriority="high" alt="">': ['html.elements.img.fetchpriority'],
  '<link rel="modulepreload" href="/a.js">': ['html.elements.link.rel.modulepreload'],
  '<search>a</search>': ['html.elements.search'],
  '<svg viewBox="0 0 1 1"><path d="M0 0" fill="none" stroke-width="1"/></svg>': [],
  '<input type="week">': ['html.elements.input.type_week'],
  '<p style="height: 1dvh">a</p>': ['css.types.length.viewport_percentage_units_dynamic'],
  '<meta name="theme-color" media="(width < 1px)" content="red">': [
    'css.at-rules.media.range_syntax',
    'html.elements.meta.name.theme-color',
  ],
};

for (const [text, want] of Object.entries(samples))
  test(text, () =>
    assert.deepEqual(
      newerIn((report) => checkMarkup(report, 'a.html', text)),
      want,
    ),
  );

test('what the data does not know of a page is told', () => {
  const report = sampleReport();
  checkMarkup(
    report,
    'a.html',
    '<frob></frob><p frob="1">a</p><link rel="frob"><input type="frob">',
  );
  assert.deepEqual(
    [...report.unknown.keys()],
    ['element: frob', 'attribute: p frob', 'link rel: frob', 'input type: frob'],
  );
});

const policy = (value) => ({ 'Content-Security-Policy': value });

test('headers', () => {
  const newer = (headers) => newerIn((report) => checkHeaders(report, headers));
  const csp = 'http.headers.Content-Security-Policy';
  assert.deepEqual(newer(policy("script-src 'self' 'wasm-unsafe-eval'; img-src data:")), [
    `${csp}.script-src.wasm-unsafe-eval`,
  ]);
  assert.deepEqual(newer(policy("fenced-frame-src 'none'; script-src 'trusted-types-eval'")), [
    `${csp}.fenced-frame-src`,
    `${csp}.script-src.trusted-types-eval`,
  ]);
  assert.deepEqual(newer({ 'Permissions-Policy': 'camera=(self), otp-credentials=()' }), [
    'http.headers.Permissions-Policy',
    'http.headers.Permissions-Policy.camera',
    'http.headers.Permissions-Policy.otp-credentials',
  ]);
  assert.deepEqual(newer({ 'Cross-Origin-Opener-Policy': 'same-origin', 'X-Frame-Options': 'DENY' }), []); // prettier-ignore
  const report = sampleReport();
  checkHeaders(report, { 'X-Frob': '1', ...policy("frob-src 'frob'") });
  assert.deepEqual([...report.unknown.keys()], ['header: X-Frob', 'directive: frob-src', "source: 'frob'"]); // prettier-ignore
});

test('a manifest', () => {
  const manifest = { name: 'a', id: '/', display_override: ['tabbed'], frob: 1 };
  const report = sampleReport();
  checkManifest(report, 'a', manifest);
  const keys = ['display_override', 'display_override.tabbed', 'id', 'name'];
  assert.deepEqual(report.keys(), keys.map((key) => `manifests.webapp.${key}`)); // prettier-ignore
  assert.deepEqual([...report.unknown.keys()], ['manifest: frob']);
});
