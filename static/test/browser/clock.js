// The clock of a page: put on as a test needs it, so that nobody waits for a timer, and a
// slow machine doesn't come too late for its end.
import { stored } from './job-page.js';

/** Runs in the page, before it: its clock is so many milliseconds ahead, and can be put on. */
export function clockAhead(ms) {
  const Real = Date;
  globalThis.ahead = ms;
  globalThis.Date = class extends Real {
    constructor(...parts) {
      super(...(parts.length ? parts : [Real.now() + globalThis.ahead]));
    }
    static now() {
      return Real.now() + globalThis.ahead;
    }
  };
}

/** Puts the clock on by so many milliseconds. */
export const putOn = (page, ms) => page.evaluate((more) => void (globalThis.ahead += more), ms);

/** Puts the clock to so many milliseconds before the end of the timer that was started last. */
export async function putBeforeEnd(page, ms) {
  const ends = (await stored(page, 'events')).flatMap(({ until }) => until ?? []);
  const end = Math.max(...ends.map((time) => Date.parse(time)));
  await page.evaluate((time) => void (globalThis.ahead += time - Date.now()), end - ms);
}
