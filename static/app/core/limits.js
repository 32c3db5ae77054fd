import { call } from './client.js';

/** @import { LimitsAnswer } from './core.d.ts' */

/**
 * What the core knows beforehand: bytes and letters, what a photo may show, and what
 * else the operation `limits` answers. Empty until loadLimits resolves.
 *
 * @type {LimitsAnswer}
 */
export const limits = {};

/** @type {Promise<void> | undefined} */
let asked;

/** Asks the core for its limits, once; a screen that needs them waits for it. */
export function loadLimits() {
  asked ??= call('limits').then(({ ok }) => {
    if (ok) Object.assign(limits, ok);
    else asked = undefined; // the next screen asks again
  });
  return asked;
}
