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
