/**
 * Offers to load again and to save the records raw (rescue.js of the frame), and says
 * why; false where that part is missing too.
 *
 * @param {string} why a sentence; empty where a part can't be had
 */
export const offerRescue = (why) =>
  !dispatchEvent(new CustomEvent('rescue', { detail: why, cancelable: true }));
