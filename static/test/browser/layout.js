// Where the things on the screen are.

/** What reaches beyond the right edge, as short markup. */
export const stickingOut = (page) =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    const out = [...document.querySelectorAll('body *')].filter((element) => {
      const { right, left, width } = element.getBoundingClientRect();
      return width > 1 && (right > clientWidth + 1 || left < -1);
    });
    const list = out.map((element) => element.outerHTML.slice(0, 120));
    return scrollWidth > clientWidth ? [`scrolls to ${scrollWidth} px`, ...list] : list;
  });

/** Makes the text that many times as large as the browser's usual. */
export const textSize = (page, times) =>
  page.evaluate((factor) => {
    const { style } = document.documentElement;
    style.fontSize = '';
    if (factor === 1) return;
    style.fontSize = `${factor * parseFloat(getComputedStyle(document.documentElement).fontSize)}px`;
  }, times);

// Small on purpose, each with its reason; 24 px is what WCAG 2.2 asks at least.
const small = [
  'dd summary', // the mark of a figure's standing, within the figure's line
];

/** The controls that a finger in a glove does not find, with their sizes. */
export const tooSmall = (page) =>
  page.evaluate((exceptions) => {
    const controls =
      'a, button, .button, input:not([type=radio], [type=checkbox], [type=file]), select, textarea, summary, fieldset label, .ticked';
    return [...document.querySelectorAll(controls)]
      .filter((element) => element.checkVisibility())
      .map((element) => [element, element.getBoundingClientRect()])
      .filter(([element, { width, height }]) => {
        const least = element.matches(exceptions) ? 24 : 56;
        return height < least || width < 24;
      })
      .map(
        ([element, { width, height }]) =>
          `${Math.round(width)} × ${Math.round(height)}: ${element.innerText}`,
      );
  }, small.join());

/** The figures on the screen whose digits stand in the wrong order. */
export const figuresTurned = (page) =>
  page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const turned = [];
    while (walker.nextNode()) {
      const { data } = walker.currentNode;
      for (const { index } of data.matchAll(/\d\d/g)) {
        const left = (at) => {
          const range = document.createRange();
          range.setStart(walker.currentNode, at);
          range.setEnd(walker.currentNode, at + 1);
          return range.getBoundingClientRect().left;
        };
        if (left(index) > left(index + 1)) turned.push(data.slice(index, index + 12));
      }
    }
    return turned;
  });
