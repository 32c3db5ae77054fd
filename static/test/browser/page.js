// A tab in the background draws no frames, so conditions are polled by the clock.
export const polling = 50; // ms

/** Waits until the page's offline state has `key` set. */
export const untilState = (page, key) =>
  page.waitForFunction((k) => globalThis.tidysump?.offline.state[k], { polling }, key);

export const stateOf = (page) => page.evaluate(() => globalThis.tidysump.offline.state);

/** Asks the page's core for what it doesn't know: "unknown-op" says that it runs. */
export const askCore = async (page) => {
  const answer = await page.evaluate(() => globalThis.tidysump.core.call('no-such-op'));
  return answer.findings?.[0]?.code;
};
