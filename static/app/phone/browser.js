// Which browser this is, as far as it can be told: what a browser does with records, and
// where its menu has the home screen, follow from no feature. Pure; signsOf() reads.

/**
 * What a browser shows of itself.
 *
 * @typedef {object} Signs
 * @property {string} agent navigator.userAgent
 * @property {string[]} brands those of navigator.userAgentData; none where there is none
 * @property {number} touches navigator.maxTouchPoints
 * @property {boolean} gestures it has GestureEvent, as only Apple's WebKit (browser-compat-data, api.GestureEvent)
 * @property {boolean} inner it has mozInnerScreenX, as only Gecko (browser-compat-data, api.Window.mozInnerScreenX)
 */

/**
 * @typedef {'webkit' | 'gecko' | 'chromium' | 'unknown'} Engine
 * @typedef {'iphone' | 'ipad' | 'android' | 'mac' | 'computer' | 'unknown'} Device
 * @typedef {{ engine: Engine, device: Device, other: boolean, inside: boolean }} Browser
 *   other: not the phone's own browser, on one whose browsers all have the same engine
 *   inside: a page inside another app, if it was not opened from an icon
 */

/**
 * @param {Signs} signs
 * @returns {Browser}
 */
export function browserOf(signs) {
  const { agent } = signs;
  const engine = engineOf(signs);
  const device = deviceOf(signs);
  const apple = engine === 'webkit' && ['iphone', 'ipad', 'mac'].includes(device);
  // Apple's browsers end with "Safari/…"; a view inside an app doesn't, nor did an app on
  // the home screen always. "Version/…" is the system's own browser's, others have their
  // name there. Android's view says "; wv)" (developer.chrome.com, WebView user agent).
  return {
    engine,
    device,
    other: apple && device !== 'mac' && /Safari\//.test(agent) && !/Version\//.test(agent),
    inside: apple ? !/Safari\//.test(agent) : device === 'android' && /; wv\)/.test(agent),
  };
}

/**
 * Features first: an agent text may be made up.
 *
 * @param {Signs} signs
 * @returns {Engine}
 */
function engineOf({ agent, brands, gestures, inner }) {
  if (brands.includes('Chromium')) return 'chromium';
  if (inner) return 'gecko';
  if (gestures) return 'webkit';
  if (/Firefox\/|rv:[\d.]+\) Gecko\//.test(agent)) return 'gecko';
  if (/Chrom(e|ium)\//.test(agent)) return 'chromium';
  return /AppleWebKit\//.test(agent) ? 'webkit' : 'unknown';
}

/**
 * An iPad calls itself a Macintosh, which has no screen to touch.
 *
 * @param {Signs} signs
 * @returns {Device}
 */
function deviceOf({ agent, touches }) {
  if (/iPhone|iPod/.test(agent)) return 'iphone';
  if (/iPad/.test(agent)) return 'ipad';
  if (/Android/.test(agent)) return 'android';
  if (/Macintosh/.test(agent)) return touches > 1 ? 'ipad' : 'mac';
  return /Windows|Linux|X11|CrOS/.test(agent) ? 'computer' : 'unknown';
}

/**
 * The signs of the browser that this runs in.
 *
 * @returns {Signs}
 */
export function signsOf() {
  const { userAgent: agent = '', maxTouchPoints: touches = 0 } = navigator;
  /** @type {{ brand: string }[]} */
  const brands = Reflect.get(navigator, 'userAgentData')?.brands ?? [];
  return {
    agent,
    brands: brands.map(({ brand }) => brand),
    touches,
    gestures: 'GestureEvent' in globalThis,
    inner: 'mozInnerScreenX' in globalThis,
  };
}
