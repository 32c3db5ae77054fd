// The bars that stay on the screen while it is scrolled. How high they are follows from
// words, letters and what the phone keeps free at its edges, so they are measured and no
// style says it: README.md of the styles.
import { isField } from './under-fingers.js';

const most = 1 / 3; // of the window's height: where they would take more, they let go
const slack = 0.9; // they hold on again only well below, so that none flickers

/**
 * What the bars take of the window, each in CSS px, and which of them let it go: 'above'
 * those above, for what one taps is below, 'all' all of them. `above` and `actions` are the
 * heights of those bars by themselves, `tabs` that of the tabs where they lie below and not
 * beside, `before` what let go until now.
 *
 * @param {{ above: number[], actions: number, tabs: number, height: number, before: string | null }} bars
 * @returns {{ above: number, below: number, tabs: number, letGo: 'all' | 'above' | null }}
 */
export function room({ above, actions, tabs, height, before }) {
  const top = above.reduce((sum, one) => sum + one, 0);
  const below = actions + tabs;
  const tooMuch = (/** @type {number} */ px, /** @type {boolean} */ loose) =>
    px > height * most * (loose ? slack : 1);
  if (tooMuch(below, before === 'all')) return { above: 0, below: 0, tabs: 0, letGo: 'all' };
  if (top && tooMuch(top + below, before !== null))
    return { above: 0, below, tabs, letGo: 'above' };
  return { above: top, below, tabs, letGo: null };
}

/**
 * What the focus comes to by keys is brought clear of the bars as a whole: a browser does it
 * for the line in which the cursor is, and for a field that only its label shows not at all.
 * It stays clear of them when something comes late above it, until the page is scrolled or
 * one goes on; what is returned brings it there after the bars have changed, which cover so
 * many px of the window.
 */
function clearFocus() {
  let byKey = false;
  /** @type {HTMLElement | undefined} */
  let held;
  let scrolled = 0; // px, when it was seen last
  let [above, below] = [0, 0];
  const letGo = () => (held = undefined);
  function keep() {
    if (held !== document.activeElement) letGo(); // it may be of a screen that is gone
    if (!held) return;
    const { top, bottom } = held.getBoundingClientRect();
    const isClear = top >= above && bottom <= innerHeight - below;
    if (scrollY !== scrolled && !isClear) return letGo(); // somebody wants to see something else
    bring(held);
    scrolled = scrollY;
  }
  addEventListener(
    'keydown',
    ({ key, target }) => {
      byKey = true;
      if (key !== 'Tab' && !isField(target)) letGo(); // it may scroll, or unfold what is below
    },
    true,
  );
  addEventListener('pointerdown', () => (letGo(), (byKey = false)), true); // nothing moves under a finger
  addEventListener('focusin', ({ target }) => {
    letGo();
    if (!byKey || !(target instanceof HTMLElement)) return;
    held = target;
    scrolled = scrollY;
    keep();
  });
  new ResizeObserver(keep).observe(document.body);
  return (/** @type {number} */ top, /** @type {number} */ bottom) => {
    [above, below] = [top, bottom];
    keep();
  };
}

/** @param {HTMLElement} focused */
const bring = (focused) =>
  (focused.closest('.file') ?? focused).scrollIntoView({ block: 'nearest' });

/**
 * Measures the bars of the page whenever they or the window change, and tells the styles:
 * `--above` and `--below` are what they cover, `--tabs` what of it are tabs, `--over` on a
 * bar above how much stands over it; `data-let-go` which of them move with the page.
 */
export function watchBars() {
  const root = document.documentElement;
  /** @type {HTMLElement[]} */
  let bars = [];
  let asked = false;
  const keepFocus = clearFocus();
  let tabsBelow = 0; // what the styles were told last

  function measure() {
    asked = false;
    const before = root.getAttribute('data-let-go');
    const of = (/** @type {string} */ kind) => bars.filter((bar) => bar.closest(kind) === bar);
    const high = (/** @type {HTMLElement[]} */ list) =>
      list.reduce((sum, bar) => sum + bar.offsetHeight, 0);
    const [tabs] = of('.tabs');
    const isBelow = tabs && tabs.offsetWidth * 2 > root.clientWidth; // else a rail
    // The bar of actions reaches below the tabs, so that nothing is seen between the two.
    const actions = of('.actions').filter((bar) => bar.offsetHeight); // not one beside a list
    const hidden = before === 'all' || !actions.length ? 0 : tabsBelow;
    const takes = room({
      above: of('[data-bar]').map((bar) => bar.offsetHeight),
      actions: high(actions) - hidden,
      tabs: isBelow ? tabs.offsetHeight : 0,
      height: innerHeight,
      before,
    });
    let over = 0;
    for (const bar of of('[data-bar]')) {
      bar.style.setProperty('--over', `${over}px`);
      over += bar.offsetHeight;
    }
    const { above, below, tabs: lowest, letGo } = takes;
    for (const [name, px] of Object.entries({ above, below, tabs: lowest }))
      root.style.setProperty(`--${name}`, `${px}px`);
    if (letGo) root.setAttribute('data-let-go', letGo);
    else root.removeAttribute('data-let-go');
    tabsBelow = lowest;
    keepFocus(above, below);
  }

  // Measured while sizes are being told, it would have the page laid out once more, of which
  // WebKit complains.
  function ask() {
    if (asked) return;
    asked = true;
    requestAnimationFrame(measure);
  }

  const sizes = new ResizeObserver(ask);
  function find() {
    /** @type {HTMLElement[]} */
    const found = [
      ...document.body.querySelectorAll(/** @type {'nav'} */ ('.tabs, .actions, [data-bar]')),
    ];
    if (found.length === bars.length && found.every((bar, n) => bar === bars[n])) return;
    bars = found;
    sizes.disconnect();
    for (const bar of bars) sizes.observe(bar, { box: 'border-box' });
    ask();
  }
  new MutationObserver(find).observe(document.body, { childList: true, subtree: true });
  addEventListener('resize', ask);
  find();
}
