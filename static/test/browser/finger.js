// A finger at the page: it taps what can be hit, and sees whether it did. What was drawn
// anew, moved or covered meanwhile is looked for again, as a person would.
import { setTimeout as pause } from 'node:timers/promises';
import { polling } from './page.js';
import { patience } from './patience.js';

/**
 * Runs in the page: brings a thing to where a finger reaches it, clear of the bars, and
 * says where that is, {x, y}, or {lacks}, why it can't be tapped. `globalThis.finger` says
 * from then on whether the next click meets it.
 */
function aim(element) {
  if (!element.isConnected) return { lacks: 'it is gone' };
  element.scrollIntoView({ block: 'center', behavior: 'instant' });
  const boxes = [...element.getClientRects()].map(({ left, top, right, bottom }) => {
    const [from, to] = [Math.max(left, 0), Math.min(right, innerWidth)];
    const [over, under] = [Math.max(top, 0), Math.min(bottom, innerHeight)];
    return { x: (from + to) / 2, y: (over + under) / 2, width: to - from, height: under - over };
  });
  const box = boxes.find(({ width, height }) => width > 1 && height > 1);
  if (!box) return { lacks: 'it is not on the screen' };
  if (element.disabled) return { lacks: 'it is disabled' };
  const whole = (part) => part.closest('a, button, label, summary');
  const meets = (other) =>
    element.contains(other) ||
    (other.contains(element) && whole(other) !== null && whole(other) === whole(element)) ||
    other.closest('label')?.control === element;
  const hit = document.elementFromPoint(box.x, box.y);
  if (!hit || !meets(hit)) return { lacks: `${hit?.outerHTML.slice(0, 120)} covers it` };
  const finger = { met: false };
  globalThis.finger = finger;
  const see = ({ target }) => (finger.met = meets(target));
  addEventListener('click', see, { capture: true, once: true });
  return { x: box.x, y: box.y };
}

/** Taps a thing once; resolves to why that failed, '' where it was hit. */
async function press(page, thing) {
  const { x, y, lacks } = await thing.evaluate(aim);
  if (lacks) return lacks;
  await page.mouse.click(x, y);
  // A page that was left by the tap can't be asked.
  const met = await thing.evaluate(() => globalThis.finger.met).catch(() => true);
  return met ? '' : 'it was drawn anew or moved while it was tapped';
}

/**
 * Taps what `find(timeout)` resolves to, found anew until it was hit. What can't be tapped
 * for longer than anybody waits is told with what is on the screen.
 */
export async function tapFound(page, find, name) {
  const end = performance.now() + patience();
  for (;;) {
    let lacks, cause;
    try {
      const thing = await find(Math.max(end - performance.now(), polling));
      lacks = await press(page, thing);
      await thing.dispose().catch(() => {}); // who holds it holds its whole screen
      if (!lacks) return;
    } catch (error) {
      if (page.isClosed()) throw error;
      [lacks, cause] = [error.message, error];
    }
    if (performance.now() > end) {
      const seen = await page.evaluate(() => document.body.innerText.replace(/\s+/g, ' '));
      throw new Error(`"${name}" can't be tapped: ${lacks}; there is: ${seen}`, { cause });
    }
    await pause(polling);
  }
}

/** Taps what the selector means. */
export const tapAt = (page, selector) =>
  tapFound(page, (timeout) => page.waitForSelector(selector, { visible: true, timeout }), selector);
