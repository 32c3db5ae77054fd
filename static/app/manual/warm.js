/** @import { call } from '../core/client.js' */

let next = 1; // which of the core's texts comes next; none once it is Infinity

/**
 * Makes what reads pages fast before there is one: the core reads short texts of its own
 * while `idle` holds, and goes on the next time where it stopped. One is asked for at a
 * time, so that a page that comes, or a tap, waits for one of them at most.
 *
 * @param {typeof call} ask
 * @param {string} language whose pages are likely
 * @param {() => boolean} idle
 */
export async function warm(ask, language, idle) {
  while (next < Infinity && idle()) {
    const { ok } = await ask('read-page', { text: '', language, warm: next });
    next = ok?.more ? next + 1 : Infinity;
  }
}
