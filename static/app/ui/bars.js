// The bars that stay on the screen while it is scrolled. How high they are follows from
// words, letters and what the phone keeps free at its edges, so they are measured and no
// style says it: README.md of the styles.

const most = 1 / 3; // of the window's height: where they would take more, they let go
const slack = 0.9; // they hold on again only well below, so that none flickers

/**
 * What the bars take of the window, each in CSS px, and whether they let it go. `above` and
 * `actions` are the heights of those bars by themselves, `tabs` that of the tabs where they
 * lie below and not beside.
 *
 * @param {{ above: number[], actions: number, tabs: number, height: number, loose: boolean }} bars
 */
export function room({ above, actions, tabs, height, loose }) {
  const top = above.reduce((sum, one) => sum + one, 0);
  const below = actions + tabs;
  const letGo = top + below > height * most * (loose ? slack : 1);
  return letGo ? { above: 0, below: 0, tabs: 0, letGo } : { above: top, below, tabs, letGo };
}

/**
 * What the focus comes to by keys is brought clear of the bars as a whole: a browser does it
 * for the line in which the cursor is, and for a field that only its label shows not at all.
 */
function clearFocus() {
  let byKey = false;
  addEventListener('keydown', () => (byKey = true), true);
  addEventListener('pointerdown', () => (byKey = false), true); // nothing moves under a finger
  addEventListener('focusin', ({ target }) => {
    if (!byKey || !(target instanceof HTMLElement)) return;
    (target.closest('.file') ?? target).scrollIntoView({ block: 'nearest' });
  });
}

/**
 * Measures the bars of the page whenever they or the window change, and tells the styles:
 * `--above` and `--below` are what they cover, `--tabs` what of it are tabs, `--over` on a
 * bar above how much stands over it; `data-let-go` that they move with the page.
 */
export function watchBars() {
  const root = document.documentElement;
  /** @type {HTMLElement[]} */
  let bars = [];
  let asked = false;
  let tabsBelow = 0; // what the styles were told last

  function measure() {
    asked = false;
    const loose = root.hasAttribute('data-let-go');
    const of = (/** @type {string} */ kind) => bars.filter((bar) => bar.matches(kind));
    const high = (/** @type {HTMLElement[]} */ list) =>
      list.reduce((sum, bar) => sum + bar.offsetHeight, 0);
    const [tabs] = of('.tabs');
    const isBelow = tabs && tabs.offsetWidth * 2 > root.clientWidth; // else a rail
    // The bar of actions reaches below the tabs, so that nothing is seen between the two.
    const actions = of('.actions');
    const hidden = loose || !actions.length ? 0 : tabsBelow;
    const takes = room({
      above: of('[data-bar]').map((bar) => bar.offsetHeight),
      actions: high(actions) - hidden,
      tabs: isBelow ? tabs.offsetHeight : 0,
      height: innerHeight,
      loose,
    });
    let over = 0;
    for (const bar of of('[data-bar]')) {
      bar.style.setProperty('--over', `${over}px`);
      over += bar.offsetHeight;
    }
    const { above, below, tabs: lowest, letGo } = takes;
    for (const [name, px] of Object.entries({ above, below, tabs: lowest }))
      root.style.setProperty(`--${name}`, `${px}px`);
    root.toggleAttribute('data-let-go', letGo);
    tabsBelow = lowest;
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
  clearFocus();
}
