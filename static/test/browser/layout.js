// Where the things on the screen are.
import { setTimeout as pause } from 'node:timers/promises';
import { polling } from './page.js';
import { patience } from './patience.js';

/**
 * What look(page), such as one of those below, finds amiss and goes on finding: what comes
 * late to the screen, and what the page does about it, is given its time.
 */
export async function staysAmiss(page, look) {
  const end = performance.now() + patience(5);
  for (;;) {
    const found = await look(page);
    if (!found.length || performance.now() > end) return found;
    await pause(polling);
  }
}

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

/**
 * What is amiss with the bars that stay: buttons in two rows, more than a third of the
 * screen, something that shows between or below them, or an end of the screen that can't
 * be scrolled clear of them.
 */
export const barsAmiss = (page) =>
  page.evaluate(() => {
    const place = (element) => element.getBoundingClientRect();
    const all = [...document.querySelectorAll('.actions, .tabs, [data-bar]')];
    const bars = all.filter((bar) => {
      const { position } = getComputedStyle(bar);
      const isRail = place(bar).width * 2 < innerWidth;
      return /fixed|sticky/.test(position) && bar.checkVisibility() && !isRail;
    });
    const below = bars.filter((bar) => bar.matches('.actions, .tabs'));
    const found = below
      .filter((bar) => {
        const buttons = [...bar.querySelectorAll(':scope > :is(a, button)')].map(place);
        return buttons.some(({ top }) => buttons.some(({ bottom }) => top >= bottom - 1));
      })
      .map(({ className }) => `${className} in two rows`);
    const top = Math.min(innerHeight, ...below.map((bar) => place(bar).top));
    const above = bars.filter((bar) => !below.includes(bar));
    const taken = innerHeight - top + above.reduce((sum, bar) => sum + place(bar).height, 0);
    if (taken > innerHeight / 3) found.push(`they take ${taken} px`);
    const { scrollY } = window;
    scrollTo(0, document.documentElement.scrollHeight);
    for (let y = Math.ceil(top); y < innerHeight; y++) {
      const seen = document.elementFromPoint(innerWidth / 2, y);
      if (!seen?.closest('.actions, .tabs, dialog')) found.push(`shows through at ${y}`);
    }
    const hidden = [...document.querySelectorAll('main :is(p, a, button, input, summary, li)')]
      .filter((element) => element.checkVisibility() && !element.closest('.actions, .tabs, dialog'))
      .filter((element) => place(element).height > 1 && place(element).bottom > top + 1);
    found.push(...hidden.slice(0, 3).map(({ outerHTML }) => `behind: ${outerHTML.slice(0, 120)}`));
    scrollTo(0, scrollY);
    return found;
  });

/**
 * How the thing that has the focus is hidden, if it is. What is larger than the room that the
 * bars leave is seen where it begins or ends.
 */
export const focusHidden = (page) =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (!at || at === document.body) return [];
    const part = at.matches('input[type=file], .drag input') ? at.parentElement : at;
    const { top, bottom, left, width, height } = part.getBoundingClientRect();
    const name = `${at.outerHTML.slice(0, 100)} at ${Math.round(top)} to ${Math.round(bottom)}`;
    if (bottom <= 0 || top >= innerHeight) return [`out of the window: ${name}`];
    const isBar = (element) => element?.closest('.actions, .tabs, [data-bar]');
    const covered = (y) => {
      const over = document.elementFromPoint(Math.min(left + width / 2, innerWidth - 1), y);
      return isBar(over) && isBar(over) !== isBar(at);
    };
    const seen = [Math.max(0, top + 1), Math.min(innerHeight - 1, bottom - 1)];
    const isLarge = height > innerHeight / 2;
    const hidden = seen.map(covered);
    if (isLarge ? hidden.every(Boolean) : hidden.some(Boolean)) return [`behind a bar: ${name}`];
    return !isLarge && (top < -1 || bottom > innerHeight + 1) ? [`cut off: ${name}`] : [];
  });

/** Waits until what changed is drawn, and what watches sizes has acted; the page must be in front. */
export const untilDrawn = (page) =>
  page.evaluate(
    () =>
      new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve()))),
  );

/** Makes the text that many times as large as the browser's usual, and waits until the page has seen it. */
export async function textSize(page, times) {
  await page.evaluate((factor) => {
    const { style } = document.documentElement;
    style.fontSize = '';
    if (factor === 1) return;
    style.fontSize = `${factor * parseFloat(getComputedStyle(document.documentElement).fontSize)}px`;
  }, times);
  await untilDrawn(page);
}

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

/**
 * The texts on the screen of which a part is not seen: they reach beyond a thing
 * that they stand in, or are cut off by it.
 */
export const cutOff = (page) =>
  page.evaluate(() => {
    const slack = 2; // px: letters reach out of their line a little
    const found = [];
    const note = (text, element) =>
      found.push(`"${text.trim().replace(/\s+/g, ' ')}" in ${element.outerHTML.slice(0, 80)}`);
    const boxes = (element) => {
      const { display, overflowX, clipPath } = getComputedStyle(element);
      const isHidden = clipPath !== 'none'; // said to a screen reader only
      const isInline = display === 'inline' || display === 'contents';
      return { isInline, scrolls: /auto|scroll/.test(overflowX), isHidden };
    };

    /** The innermost thing round a text that the text reaches out of; what can be scrolled to is seen. */
    function tooNarrow(node) {
      const range = document.createRange();
      const lines = [...node.data.matchAll(/\S+/g)].flatMap(({ 0: word, index }) => {
        range.setStart(node, index);
        range.setEnd(node, index + word.length);
        return [...range.getClientRects()];
      });
      let narrow;
      for (let box = node.parentElement; box !== document.body; box = box.parentElement) {
        if (box.matches('svg')) return narrow; // what is drawn may reach beyond it
        const { isInline, scrolls, isHidden } = boxes(box);
        if (scrolls || isHidden) return undefined;
        const { left, right } = box.getBoundingClientRect();
        const isOut = lines.some((line) => line.left < left - slack || line.right > right + slack);
        if (!isInline && isOut) narrow ??= box;
      }
      return narrow;
    }

    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const { data, parentElement } = walker.currentNode;
      if (!data.trim() || parentElement.closest('option') || !parentElement.checkVisibility())
        continue;
      const narrow = tooNarrow(walker.currentNode);
      if (narrow) note(data, narrow);
    }
    for (const element of document.querySelectorAll('body *:not(input, select, textarea)')) {
      const { overflowX, overflowY, clipPath } = getComputedStyle(element);
      const { clientWidth, clientHeight, scrollWidth, scrollHeight } = element;
      if (clipPath !== 'none') continue;
      const cuts = (overflow, room, need) => /hidden|clip/.test(overflow) && need > room + slack;
      if (cuts(overflowX, clientWidth, scrollWidth) || cuts(overflowY, clientHeight, scrollHeight))
        note(element.textContent, element);
    }
    // What is chosen of a list is seen whole only if it may take several lines, which
    // needs an arrow that the browser doesn't draw.
    for (const list of document.querySelectorAll('select')) {
      const { appearance, whiteSpaceCollapse, textWrapMode } = getComputedStyle(list);
      const wraps =
        appearance === 'none' && whiteSpaceCollapse === 'collapse' && textWrapMode === 'wrap';
      if (!wraps) note(list.selectedOptions[0]?.text ?? '', list);
    }
    return found;
  });

/** All that is read on the screen or by a screen reader, text by text. */
export const readTexts = (page) =>
  page.evaluate(() => {
    const texts = [document.title];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const { data, parentElement } = walker.currentNode;
      const shown = parentElement.closest('option') ?? parentElement.checkVisibility();
      const quoted = parentElement.closest('.written, q'); // the words of a page, in its language
      if (shown && !quoted && data.trim()) texts.push(data);
    }
    for (const name of ['aria-label', 'aria-description', 'title', 'placeholder', 'alt'])
      for (const element of document.querySelectorAll(`[${name}]`))
        texts.push(element.getAttribute(name));
    return texts.map((text) => text.replace(/\s+/g, ' ').trim());
  });

/**
 * The texts in a page from right to left in which a name or a figure does not stand
 * by itself: its parts may be read in another order. Pictures are not turned.
 */
export const notIsolated = (page) =>
  page.evaluate(() => {
    const isolated = /[\u2066-\u2068][^\u2066-\u2069]*\u2069/g;
    const found = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const { data, parentElement } = walker.currentNode;
      if (!parentElement.checkVisibility() || parentElement.closest('svg, bdi, [dir]:not(html)'))
        continue;
      let rest = data;
      while (rest.search(isolated) >= 0) rest = rest.replace(isolated, '');
      if (/[a-z]|\d[–/-]\d/i.test(rest)) found.push(data.trim().replace(/\s+/g, ' '));
    }
    return found;
  });
