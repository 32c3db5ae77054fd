// What is measured on the screen, in any engine. Each function runs in the page by its text.

/** How much wider than the screen the page is, in px. */
export const overWide = () =>
  Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** How many rows the buttons in the bar of a job stand in. */
export const rowsOfBar = () => {
  const middles = [...document.querySelectorAll('.actions > button')]
    .map((element) => element.getBoundingClientRect())
    .filter(({ width, height }) => width > 0 && height > 0)
    .map(({ top, height }) => Math.round((top + height / 2) / 10));
  return new Set(middles).size;
};

/**
 * The least contrast (WCAG 2.2) of text and its ground among headings, sentences, buttons
 * and fields, and whether the page is dark: {least, of, dark}.
 */
export const contrast = () => {
  const channels = (colour) => (colour.match(/[\d.]+/g) || []).map(Number);
  const light = (colour) => {
    const [r, g, b] = channels(colour)
      .slice(0, 3)
      .map((part) => part / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = (element) => {
    for (let up = element; up; up = up.parentElement) {
      const colour = getComputedStyle(up).backgroundColor;
      const [, , , alpha = 1] = channels(colour);
      if (alpha > 0.5) return colour;
    }
    return 'rgb(255, 255, 255)';
  };
  const ratio = (one, two) => {
    const [low, high] = [light(one), light(two)].sort((a, b) => a - b);
    return (high + 0.05) / (low + 0.05);
  };
  const texts =
    'h1, h2, p, a, label, button, select, [type=text], [type=search], input:not([type])';
  let least = 21;
  let of = '';
  for (const element of document.querySelectorAll(texts)) {
    const { width, height } = element.getBoundingClientRect();
    if (!width || !height || element.disabled) continue;
    const found = ratio(getComputedStyle(element).color, ground(element));
    if (found >= least) continue;
    least = found;
    of = element.outerHTML.slice(0, 160);
  }
  return { least, of, dark: light(ground(document.body)) < 0.18 };
};

/** Which of the texts stands on the screen, if one does. */
export const oneOf = (texts) => {
  const all = document.body.innerText.replace(/\s+/g, ' ').replace(/[\u2066-\u2069]/g, '');
  return texts.find((text) => all.includes(text));
};
