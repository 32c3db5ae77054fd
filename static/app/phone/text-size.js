// With very large text the bars at the bottom would cover half the screen: then
// they stand at the end of the page instead. Media queries can't see the size
// of the root's text, so it is measured.
const narrow = 19; // rem

/**
 * Marks the page while less than 19rem of it fit across.
 *
 * @param {Element} app
 */
export function watchTextSize(app) {
  const root = document.documentElement;
  const measure = () => {
    const rem = Number.parseFloat(getComputedStyle(root).fontSize);
    root.toggleAttribute('data-large-text', root.clientWidth < narrow * rem);
  };
  // Measured while sizes are being told, it would have the page laid out once more, of which
  // WebKit complains.
  new ResizeObserver(() => requestAnimationFrame(measure)).observe(app);
}
