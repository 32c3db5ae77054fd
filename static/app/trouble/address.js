import { addressWith, withAddress } from '../ui/address-with.js';

/**
 * What goes with a problem: what was answered, what is at hand, the bike, or the job and
 * step that one comes from, and the door behind which one looks.
 *
 * @typedef {{ answers?: Record<string, string>, hand?: string[], bike?: string, job?: string, step?: string, door?: string }} TroubleState
 */

/**
 * The address of a problem, or with no id of their list, with what goes with it.
 *
 * @param {string} id
 * @param {TroubleState} state
 */
export const troubleAt = (id, { answers, hand, bike, job, step, door }) =>
  addressWith(id ? ['trouble', id] : ['trouble'], { ...answers, hand, bike, job, step, door });

/**
 * What goes with an address: all but what has a name of its own was answered.
 *
 * @param {string | undefined} part
 * @returns {TroubleState}
 */
export function readState(part) {
  const { hand, bike, job, step, door, ...answers } = Object.fromEntries(withAddress(part));
  const first = (/** @type {[string, string[]]} */ [name, [text]]) => (text ? [[name, text]] : []);
  const state = Object.fromEntries(
    Object.entries({ bike, job, step, door }).flatMap(([name, list = []]) => first([name, list])),
  );
  const given = Object.fromEntries(Object.entries(answers).flatMap(first));
  if (Object.keys(given).length) state.answers = given;
  if (hand?.some(Boolean)) state.hand = hand.filter(Boolean);
  return state;
}
