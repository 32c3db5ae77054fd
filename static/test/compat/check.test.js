import assert from 'node:assert/strict';
import { test } from 'node:test';
import { faults } from './check.js';
import { sampleReport } from './samples.js';
import { checkStyle } from './style.js';
import { missing, promisedBrowsers, upTo } from './support.js';

const files = [
  { path: 'static/test/browser/a.test.js', text: "test('it falls back', () => {});" },
  { path: 'internal/a/a_test.go', text: '\nfunc TestFallsBack(' },
];

const found = (text) => {
  const report = sampleReport();
  checkStyle(report, 'a.css', text);
  return report;
};
const has = 'css.selectors.has';
const report = found('a:has(b) { top: 0 }');

test('what is newer is a fault until it is excepted, with a reason and a test that is there', () => {
  const why = 'ornament';
  const judged = (...exceptions) => faults(report, exceptions, {}, files).join('\n');
  assert.match(judged(), /^css\.selectors\.has is newer than promised \(chrome 105, .*a:has\(b\)$/);
  assert.equal(judged({ keys: [has], why, test: 'browser/a:it falls back' }), '');
  assert.equal(judged({ keys: ['css.selectors.*'], why, test: 'TestFallsBack' }), '');
  assert.match(judged({ keys: [has], test: 'TestFallsBack' }), /without a reason/);
  assert.match(judged({ keys: [has], why }), /no test shows/);
  assert.match(judged({ keys: [has], why, test: 'browser/a:falls' }), /has no test "falls"/);
  assert.match(judged({ keys: [has], why, test: 'browser/a' }), /has no test ""/);
  assert.match(judged({ keys: [has], why, test: 'browser/b:it' }), /no test browser\/b/);
  assert.match(judged({ keys: [has], why, test: 'TestOther' }), /There is no test TestOther/);
});

test('an exception that nothing needs is a fault', () => {
  const exceptions = [{ keys: [has, 'css.selectors.modal'], why: 'a', test: 'TestFallsBack' }];
  assert.deepEqual(faults(report, exceptions, {}, files), [
    'css.selectors.modal is excepted, and nothing needs it',
  ]);
});

test('an older value before each use stands for a test', () => {
  const keys = ['css.types.length.viewport_percentage_units_dynamic'];
  const judged = (text) =>
    faults(found(text), [{ keys, why: 'a', before: true }], {}, files).join('\n');
  assert.equal(judged('a { height: 1vh; height: 1dvh }'), '');
  assert.match(judged('a { height: 1vh; height: 1dvh } b { height: 1dvh }'), /newer than promised/);
});

test('what the data does not know is a fault until it is listed, and only as long as it is there', () => {
  const unknown = found('a { frob: 1 }');
  assert.match(faults(unknown, [], {}, files).join(), /not in the data: property: frob/);
  assert.deepEqual(faults(unknown, [], { 'property: frob': 'ours' }, files), []);
  assert.match(faults(report, [{ keys: [has], why: 'a', test: 'TestFallsBack' }], { 'property: frob': 'ours' }, files).join(), /not in use/); // prettier-ignore
});

test('which browsers lack a feature', () => {
  const promised = promisedBrowsers({ iOS: '15.4', Chrome: '102' });
  assert.throws(() => promisedBrowsers({ Netscape: '4' }), /Netscape/);
  const lacking = (safari_ios, chrome = { version_added: '1' }) =>
    missing({ __compat: { support: { safari_ios, chrome, chrome_android: chrome } } }, promised);
  assert.deepEqual(lacking({ version_added: '15.4' }), {});
  assert.deepEqual(lacking({ version_added: '≤15' }), {});
  assert.deepEqual(lacking({ version_added: '15.5' }), { safari_ios: '15.5' });
  assert.deepEqual(lacking({ version_added: '16.0' }), { safari_ios: '16.0' });
  assert.deepEqual(lacking({ version_added: false }), { safari_ios: 'never' });
  assert.deepEqual(lacking({ version_added: 'preview' }), { safari_ios: 'never' });
  assert.deepEqual(lacking({ version_added: '9', prefix: '-webkit-' }), { safari_ios: 'never' });
  const part = { version_added: '14', version_removed: '16', partial_implementation: true };
  assert.deepEqual(lacking(part), { safari_ios: 'in part' });
  assert.deepEqual(lacking([{ version_added: '16' }, part]), { safari_ios: '16, in part before' });
  assert.deepEqual(lacking({ ...part, version_removed: '15' }), { safari_ios: 'never' });
  assert.deepEqual(lacking([{ version_added: '16' }, { version_added: '14', version_removed: '15' }]), { safari_ios: '16' }); // prettier-ignore
  assert.deepEqual(lacking(undefined), { safari_ios: 'unknown' });
  assert.deepEqual(missing({}, promised), {});
  for (const [a, b, is] of [
    ['15.4', '15.4', true],
    ['15.10', '15.4', false],
    ['9', '15.4', true],
    ['15', '15.0', true],
  ])
    assert.equal(upTo(a, b), is, `${a} up to ${b}`);
});

test('what keeps a script or a program from being read is no matter of exceptions', () => {
  const judged = (key, version) => {
    const of = sampleReport();
    of.found.set(key, { key, missing: { safari_ios: version }, places: ['a'] });
    return faults(of, [{ keys: [key], why: 'a', test: 'TestFallsBack' }], {}, files).length;
  };
  for (const key of [
    'javascript.regular_expressions.modifier',
    'javascript.builtins.RegExp.unicodeSets',
    'webassembly.threads-and-atomics',
  ])
    // prettier-ignore
    assert.equal(judged(key, '16.4'), 1, key);
  assert.equal(judged('javascript.operators.await.top_level', '27, in part before'), 0);
  for (const key of [
    'javascript.builtins.Array.with',
    'javascript.builtins.Intl.DurationFormat',
    'webassembly.api.Tag',
  ])
    // prettier-ignore
    assert.equal(judged(key, '16.4'), 0, key);
});
