// The ways to the home screen: which there are, and which is the one here. Pure; where a
// button is has its source beside it.
//
// [MDN]    developer.mozilla.org, "Installing and uninstalling web apps"
// [WK-ITP] webkit.org/tracking-prevention, "Home Screen Web Application Domain Exempt From ITP"
// [WK-26]  webkit.org, "News from WWDC25": every site opens as an app, unless that is switched off
// [WK-MAC] webkit.org, "News from WWDC23": "Add to Dock"; nothing but cookies is taken along
// [CR]     chromium.googlesource.com, docs/webapps/README.md, "User Entry Points"
// [GECKO]  firefox-source-docs.mozilla.org, "Web Apps in Firefox": Windows alone, "the same
//          access … as a normal tab"

/** @import { Browser } from '../phone/browser.js' */

/**
 * Each way by its name: the word ids of its steps, and whether the icon begins with a store
 * of its own: [WK-ITP] an app on the home screen is isolated from the browser, [WK-MAC] in
 * the Dock too; elsewhere [MDN], [GECKO] the browser that installed it runs it.
 *
 * Where the share button is on iPhones since 26, and what the menu of Gecko says, is from memory.
 */
export const ways = new Map(
  /** @type {[string, { steps: string[], apart: boolean }][]} */ ([
    // [MDN] in Safari; [WK-26] the switch
    ['iphone', { steps: ['home.share-below', 'home.add-line', 'home.add-yes'], apart: true }],
    ['ipad', { steps: ['home.share-above', 'home.add-line', 'home.add-yes'], apart: true }],
    // [MDN] since 16.4 in other browsers too
    ['apple-other', { steps: ['home.share-other', 'home.add-line', 'home.add-yes'], apart: true }],
    // [CR] "3-dot menu > Add to Home screen / Install app"
    ['android-chromium', { steps: ['home.dots-above', 'home.menu-install'], apart: false }],
    ['android-gecko', { steps: ['home.dots-beside', 'home.menu-add'], apart: false }],
    // [WK-MAC] since macOS 14
    ['mac', { steps: ['home.file-menu', 'home.dock'], apart: true }],
    // [CR] "an install icon appears in the omnibox"
    ['computer-chromium', { steps: ['home.address-sign', 'home.install-yes'], apart: false }],
  ]),
);

/** @type {(why: string) => { way: null, why: string }} */
const none = (why) => ({ way: null, why });

/**
 * The way here, or the word id of why there is none.
 *
 * @param {Browser} browser
 * @param {{ secure: boolean, installed: boolean }} facts
 * @returns {{ way: string | null, why: string | null }}
 */
export function wayHere({ engine, device, other, inside }, { secure, installed }) {
  if (installed) return none('home.is-there');
  if (!secure) return none('home.insecure'); // [MDN] over HTTPS alone, or from localhost
  if (inside) return none('home.inside'); // a view in an app has no menu of a browser
  const way = wayOf(engine, device, other);
  if (way) return { way, why: null };
  return none(engine === 'gecko' ? 'home.computer-gecko' : 'home.unknown'); // [GECKO]
}

/**
 * @param {Browser['engine']} engine
 * @param {Browser['device']} device
 * @param {boolean} other
 */
function wayOf(engine, device, other) {
  if (device === 'iphone' || device === 'ipad')
    return other || engine !== 'webkit' ? 'apple-other' : device;
  if (device === 'mac' && engine === 'webkit') return 'mac';
  const place = device === 'mac' ? 'computer' : device;
  return [...ways.keys()].find((way) => way === `${place}-${engine}`);
}
