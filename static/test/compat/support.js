// What the browser-compat data says about the oldest browsers that the page promises to
// run in.
import { createRequire } from 'node:module';

const data = createRequire(import.meta.url)('@mdn/browser-compat-data');

// Which browsers of the data are meant by the names that people are told.
const browsersOf = {
  iOS: ['safari_ios'],
  Firefox: ['firefox', 'firefox_android'],
  Chrome: ['chrome', 'chrome_android'],
};

/** The promised versions by the data's names, from those that people are told: {iOS: '15.4'}. */
export function promisedBrowsers(told) {
  const promised = {};
  for (const [name, version] of Object.entries(told)) {
    if (!browsersOf[name]) throw new Error(`no browser of the data is called ${name}`);
    for (const browser of browsersOf[name]) promised[browser] = version;
  }
  return promised;
}

/** What stands at a way through the data, ['css', 'properties', 'color']; undefined if nothing. */
export const lookUp = (way) =>
  way.reduce((node, name) => (node && Object.hasOwn(node, name) ? node[name] : undefined), data);

/** The members of a part of the data, as [name, node]; without what it says of itself. */
export const parts = (node) => Object.entries(node).filter(([name]) => name !== '__compat');

/** Whether version a is b or before it. */
export function upTo(a, b) {
  const [x, y] = [a, b].map((version) => version.replace('≤', '').split('.').map(Number));
  for (let i = 0; i < Math.max(x.length, y.length); i++)
    if ((x[i] ?? 0) !== (y[i] ?? 0)) return (x[i] ?? 0) < (y[i] ?? 0);
  return true;
}

// A feature under another name or behind a switch does not count.
const plain = ({ version_added, flags, prefix, alternative_name }) =>
  typeof version_added === 'string' &&
  version_added !== 'preview' &&
  !flags &&
  !prefix &&
  !alternative_name;
const whole = (one) => plain(one) && !one.version_removed && !one.partial_implementation;

/** Said of a feature that a browser has, but not all of it. */
export const inPart = 'in part';

/** Since when a browser has what was said of it, if it lacks it at that version: '' if it doesn't. */
function lacking(said, version) {
  if (said.some((one) => whole(one) && upTo(one.version_added, version))) return '';
  const { version_added: since } = said.find(whole) ?? {};
  const has = said.some(
    (one) =>
      plain(one) &&
      one.partial_implementation &&
      upTo(one.version_added, version) &&
      !(one.version_removed && upTo(one.version_removed, version)),
  );
  if (has) return since ? `${since}, ${inPart} before` : inPart;
  return since ?? (said.length ? 'never' : 'unknown');
}

/**
 * Which of the promised browsers lack what a node of the data describes, and since when
 * they have it: {safari_ios: '16.4'}; empty when all have it. A node that describes
 * nothing itself is as old as what it belongs to.
 */
export function missing(node, promised) {
  const out = {};
  if (!node?.__compat) return out;
  for (const [browser, version] of Object.entries(promised)) {
    const since = lacking([node.__compat.support[browser] ?? []].flat(), version);
    if (since) out[browser] = since;
  }
  return out;
}
