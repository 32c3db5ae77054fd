// What becomes of the records in this browser, as it was published, and what it promised:
// pure, from facts. Each rule has its source.
//
// [WK-ITP]   webkit.org/tracking-prevention, "7-Day Cap on All Script-Writeable Storage" and
//            "Home Screen Web Application Domain Exempt From ITP"
// [WK-STORE] webkit.org/blog/14403, "Updates to Storage Policy"
// [WK-DOCK]  bugs.webkit.org/209563, comment of 2023-11-04: the Dock is exempt as well
// [MDN]      developer.mozilla.org, "Storage quotas and eviction criteria"
// [WHATWG]   storage.spec.whatwg.org, "Persistence permission", "Storage pressure"
// [WEB-DEV]  web.dev/articles/persistent-storage

/** @import { Browser } from './browser.js' */

/**
 * @typedef {object} StorageFacts
 * @property {boolean} store there is a store at all
 * @property {boolean} secure the page came by a way that a browser trusts
 * @property {boolean} installed opened from an icon, in a window of its own
 * @property {boolean | null} persisted the browser has promised to keep the records; null when it doesn't say
 * @property {boolean | null} answer what it said when it was last asked; null if it never was
 */

/**
 * @typedef {'granted' | 'refused' | 'not-asked' | 'unknown'} PromiseWord
 * @typedef {object} Fate
 * @property {PromiseWord | null} promise null where no promise can be had
 * @property {string[]} says word ids, the worst first
 * @property {boolean} ask whether asking the browser may change it
 */

/**
 * What the browser promised.
 *
 * [WHATWG] a store is "persistent" or "best-effort"; the browser, or the person, decides.
 *
 * @param {StorageFacts} facts
 * @returns {PromiseWord}
 */
function promiseOf({ persisted, answer }) {
  if (persisted === null) return 'unknown';
  if (persisted) return 'granted';
  return answer === false ? 'refused' : 'not-asked';
}

/**
 * @param {StorageFacts} facts
 * @param {Browser} browser
 * @returns {Fate}
 */
export function fateOf(facts, browser) {
  if (!facts.store) return { promise: null, says: ['storage.nothing'], ask: false };
  const promise = facts.secure ? promiseOf(facts) : null;
  const says = [...byTime(facts, browser), ...bySpace(promise, facts, browser)];
  // [MDN] what a private window stores goes when it ends. No page can tell whether it is in one.
  if (!facts.installed) says.push('storage.private');
  return { promise, says, ask: promise === 'refused' || promise === 'not-asked' };
}

/**
 * What goes by the mere time.
 *
 * [WK-ITP] after seven days of use of the browser without a tap or a key in the page, all
 * that a script wrote may go; not so of an app on the home screen, or [WK-DOCK] in the
 * Dock, whose store is apart from the browser's. [MDN] no other engine does that. A page
 * inside another app lies in that app's store ([WK-STORE], [MDN] per app).
 *
 * @param {Pick<StorageFacts, 'installed'>} facts
 * @param {Browser} browser
 */
export function byTime({ installed }, { engine, inside }) {
  if (installed) return engine === 'webkit' ? ['storage.spared', 'storage.own'] : [];
  if (inside) return ['storage.inside', ...(engine === 'webkit' ? ['storage.seven-days'] : [])];
  return engine === 'webkit' ? ['storage.seven-days', 'storage.home-spared'] : [];
}

/**
 * What goes when the phone is full.
 *
 * [MDN] best-effort stores go then, those least used first; persistent ones only if the
 * person says so. Only over HTTPS can a page ask ([MDN], StorageManager: secure contexts).
 * Who decides: [WK-STORE] WebKit, "based on heuristics like whether the website is opened
 * as a Home Screen Web App"; [WEB-DEV] Chromium, by whether it is much used, installed,
 * bookmarked, or may show notices; [MDN] Gecko asks the person. That a promise stops the
 * seven days is published nowhere.
 *
 * @param {PromiseWord | null} promise
 * @param {StorageFacts} facts
 * @param {Browser} browser
 */
function bySpace(promise, { installed }, { engine }) {
  if (promise === null) return ['storage.insecure'];
  const said = [`storage.promise.${promise}`];
  if (promise === 'granted' && engine === 'webkit' && !installed)
    said.push('storage.promise.not-days');
  if (promise === 'refused' || promise === 'not-asked') {
    if (engine === 'gecko') said.push(`storage.rule.gecko.${promise}`);
    else if (engine !== 'unknown' && !installed) said.push(`storage.rule.${engine}`);
  }
  return said;
}
