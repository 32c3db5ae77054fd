import { money } from '../words/money.js';

/** @import { BillAnswer, Money } from '../core/core.d.ts' */

/**
 * An amount of the core as it is read.
 *
 * @param {Money} amount
 */
export const amount = ({ minor, digits, currency }) =>
  money(minor, /** @type {BillAnswer} */ ({ digits, currency }));
